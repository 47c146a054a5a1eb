// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "network/temperatures.hpp"

#include <Eigen/SparseCore>
#include <Eigen/SparseLU>

#include <algorithm>
#include <cmath>

namespace loopfolio::network {

namespace {

constexpr int most_rounds = 100;
constexpr double first_reach = 20.0;  // K: largest step at the start
constexpr double settled = 1e-9;      // K
// Added to a node's own coefficient, as a share of it: without this, the temperature of water that circulates without
// an emitter would be undetermined.
constexpr double held_in_place = 1e-11;

/// What the unknown of a room means in this iteration.
enum class RoomUnknown { temperature, share };

/// The equations of one iteration. The unknowns are the temperature of each node that water flows into, then for each
/// room that is not fixed its temperature or its share.
class Equations {
public:
    Equations(ThermalState& state, const System& system) : s_{state}, system_{system} {
        node_.assign(s_.node.size(), -1);
        for (std::size_t n = 0; n < node_.size(); ++n) {
            if (s_.inflow[n] > 0.0) node_[n] = size_++;
            else s_.node[n] = s_.standing;
        }
        room_.assign(system.rooms.size(), -1);
        kind_.assign(system.rooms.size(), RoomUnknown::temperature);
        for (std::size_t r = 0; r < room_.size(); ++r) {
            if (system.rooms[r].control != RoomControl::fixed) room_[r] = size_++;
        }
        matrix_.resize(size_, size_);
        right_.resize(size_);
        set_bounds();
    }

    /// Returns the largest change in kelvin that Newton's method needs, or a negative number where the equations are
    /// singular.
    double round() {
        entries_.clear();
        right_.setZero();
        const bool switched = choose_unknowns();
        add_nodes();
        for (const auto& stream : s_.streams) add_stream(stream);
        for (std::size_t r = 0; r < room_.size(); ++r) {
            if (room_[r] >= 0) add_room(r);
        }
        matrix_.setFromTriplets(entries_.begin(), entries_.end());
        factors_.compute(matrix_);
        if (factors_.info() != Eigen::Success) return -1.0;
        const Eigen::VectorXd change = factors_.solve(right_);
        if (!change.allFinite()) return -1.0;
        const double moved = apply(change);
        return switched ? std::max(moved, 1.0) : moved;
    }

private:
    /// Water cannot be colder than all its surroundings, nor warmer than all that heats it. Where every emitter is off
    /// the equations are nearly singular, and without these bounds a step could be far too large.
    void set_bounds() {
        coldest_ = system_.outdoor.kelvin();
        hottest_ = s_.standing;
        for (const auto& stream : s_.streams) {
            if (stream.keeps == 1.0) continue;
            coldest_ = std::min(coldest_, stream.ambient);
            hottest_ = std::max(hottest_, stream.ambient);
        }
        for (const auto& room : system_.rooms) {
            coldest_ = std::min(coldest_, room.set_temperature.kelvin());
            double without_emitters = room.set_temperature.kelvin();
            if (room.control != RoomControl::fixed) {
                without_emitters = std::max(without_emitters, (system_.outdoor + room.gains / room.loss).kelvin());
            }
            hottest_ = std::max(hottest_, without_emitters);
        }
    }

    /// A held room with enough output available stays at its set temperature, and the unknown is its share.
    bool choose_unknowns() {
        bool switched = false;
        for (std::size_t r = 0; r < room_.size(); ++r) {
            if (room_[r] < 0) continue;
            auto kind = RoomUnknown::temperature;
            if (system_.rooms[r].control == RoomControl::held) {
                const double set = system_.rooms[r].set_temperature.kelvin();
                const double available = room_at(s_, system_, r, set).output;
                if (available >= s_.need[r]) kind = RoomUnknown::share;
                if (kind == RoomUnknown::share) {
                    s_.room[r] = set;
                    s_.share[r] = available > 0.0 ? s_.need[r] / available : 0.0;
                }
            }
            if (kind == RoomUnknown::temperature) s_.share[r] = 1.0;
            switched = switched || kind != kind_[r];
            kind_[r] = kind;
        }
        return switched;
    }

    void add_nodes() {
        for (std::size_t n = 0; n < node_.size(); ++n) {
            if (node_[n] < 0) continue;
            entries_.emplace_back(node_[n], node_[n], s_.inflow[n] * (1.0 + held_in_place));
            right_[node_[n]] -= s_.inflow[n] * s_.node[n];
        }
    }

    /// The outlet temperature of the stream changes by `slope` for each kelvin of its inlet temperature.
    void add_mixing(const Stream& stream, double outlet, double slope) {
        const int row = node_[at(stream.down)];
        const int column = node_[at(stream.up)];
        right_[row] += stream.flow * outlet;
        if (column >= 0 && slope != 0.0) entries_.emplace_back(row, column, -stream.flow * slope);
    }

    void add_stream(const Stream& stream) {
        const double inlet = s_.node[at(stream.up)];
        if (stream.source >= 0) {
            const auto out = source_outlet(system_.sources[at(stream.source)], stream, inlet);
            add_mixing(stream, out.temperature, out.follows_inlet ? 1.0 : 0.0);
        } else if (stream.emitter >= 0) {
            add_emitter(stream, inlet);
        } else {
            add_mixing(stream, pipe_outlet(stream, inlet), stream.keeps);
        }
    }

    void add_emitter(const Stream& stream, double inlet) {
        const Emitter& emitter = system_.emitters[at(stream.emitter)];
        const auto r = at(emitter.room);
        const double share = s_.share[r];
        const EmitterState e = emitter_at(s_, system_, stream, inlet, s_.room[r]);
        add_mixing(stream, inlet - share * e.output / stream.capacity, 1.0 - share * e.slope / stream.capacity);
        if (room_[r] < 0) return;
        const bool by_share = kind_[r] == RoomUnknown::share;
        const double by_room = by_share ? -e.output / stream.capacity : share * e.slope / stream.capacity;
        entries_.emplace_back(node_[at(stream.down)], room_[r], -stream.flow * by_room);
        if (by_share && s_.need[r] == 0.0) return;
        const EmitterState inside{e.output * to_room(emitter), e.slope * to_room(emitter)};
        right_[room_[r]] += share * inside.output;
        entries_.emplace_back(room_[r], room_[r], by_share ? -inside.output : share * inside.slope);
        if (node_[at(stream.up)] >= 0) entries_.emplace_back(room_[r], node_[at(stream.up)], -share * inside.slope);
    }

    /// Heat balance of a room: its loss to outdoors, less its gains and the output of its emitters, is zero.
    void add_room(std::size_t r) {
        const Room& room = system_.rooms[r];
        if (kind_[r] == RoomUnknown::share) {
            if (s_.need[r] == 0.0) entries_.emplace_back(room_[r], room_[r], 1.0);
            else right_[room_[r]] -= s_.need[r];
            return;
        }
        entries_.emplace_back(room_[r], room_[r], room.loss.si());
        right_[room_[r]] -= room.loss.si() * (s_.room[r] - system_.outdoor.kelvin()) - room.gains.si();
    }

    /// Applies a share of the whole step, limited by the reach. Where rooms change between held and falling and
    /// emitters go off, slopes jump and full steps would oscillate, so each reversal halves the reach.
    double apply(const Eigen::VectorXd& change) {
        double moved = 0.0;
        double sum = 0.0;
        for (std::size_t n = 0; n < node_.size(); ++n) {
            if (node_[n] < 0) continue;
            moved = std::max(moved, std::abs(change[node_[n]]));
            sum += change[node_[n]];
        }
        for (std::size_t r = 0; r < room_.size(); ++r) {
            if (room_[r] < 0) continue;
            const bool by_share = kind_[r] == RoomUnknown::share;
            moved = std::max(moved, std::abs(change[room_[r]]) * (by_share ? 100.0 : 1.0));
        }
        if (sum * last_sum_ < 0.0) reach_ *= 0.5;
        last_sum_ = sum;
        move(change, std::min(1.0, reach_ / std::max(moved, settled)));
        return moved;
    }

    void move(const Eigen::VectorXd& change, double share_of_step) {
        for (std::size_t n = 0; n < node_.size(); ++n) {
            if (node_[n] < 0) continue;
            s_.node[n] = std::clamp(s_.node[n] + share_of_step * change[node_[n]], coldest_, hottest_);
        }
        for (std::size_t r = 0; r < room_.size(); ++r) {
            if (room_[r] < 0) continue;
            const double step = share_of_step * change[room_[r]];
            if (kind_[r] == RoomUnknown::share) s_.share[r] = std::clamp(s_.share[r] + step, 0.0, 1.0);
            else s_.room[r] = std::clamp(s_.room[r] + step, coldest_, hottest_);
        }
    }

    ThermalState& s_;
    const System& system_;
    int size_ = 0;
    double coldest_ = 0.0;  // K
    double hottest_ = 0.0;
    double reach_ = first_reach;
    double last_sum_ = 0.0;
    std::vector<int> node_;  // index of the unknown by node; -1 for none
    std::vector<int> room_;  // index of the unknown by room; -1 for none
    std::vector<RoomUnknown> kind_;
    std::vector<Eigen::Triplet<double>> entries_;
    Eigen::SparseMatrix<double> matrix_;
    Eigen::VectorXd right_;
    Eigen::SparseLU<Eigen::SparseMatrix<double>, Eigen::COLAMDOrdering<int>> factors_;
};

}  // namespace

TemperatureOutcome solve_temperatures(ThermalState& s, const System& system) {
    TemperatureOutcome out;
    Equations equations{s, system};
    for (out.rounds = 1; out.rounds <= most_rounds; ++out.rounds) {
        out.last_change = equations.round();
        out.found = out.last_change >= 0.0 && out.last_change <= settled;
        if (out.found || out.last_change < 0.0) break;
    }
    return out;
}

}  // namespace loopfolio::network
