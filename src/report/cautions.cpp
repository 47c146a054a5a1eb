// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "report/cautions.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace loopfolio::report {

namespace {

bool always(const Context&) { return true; }

bool replaces_gas(const Context& c) { return c.job.heat_source && c.job.heat_source->replaces_gas_appliance; }

bool electrical(const Context& c) { return c.job.heat_source || c.job.circulator; }

bool flammable(const Context& c) { return c.job.heat_source && c.job.heat_source->flammable_refrigerant; }

bool propylene(const Context& c) { return c.job.fluid.kind == job::FluidName::propylene_glycol; }

bool ethylene(const Context& c) { return c.job.fluid.kind == job::FluidName::ethylene_glycol; }

bool unvented(const Context& c) { return c.job.unvented_hot_water; }

bool store(const Context& c) { return c.job.hot_water_store || c.job.unvented_hot_water; }

bool lagging(const Context& c) { return c.job.old_lagging; }

/// Pipe or emitters are fitted or taken out, so boards are lifted and holes are made.
bool opens_fabric(const Context& c) {
    const auto is_new = [](const auto& item) { return !item.existing; };
    const auto changes = [](const auto& result) { return result.verdict == Verdict::change; };
    const auto emitter_changes = [](const auto& result) { return result.finding.verdict == Verdict::change; };
    return std::any_of(c.job.sections.begin(), c.job.sections.end(), is_new) ||
           std::any_of(c.job.emitters.begin(), c.job.emitters.end(), is_new) ||
           std::any_of(c.design.sections.begin(), c.design.sections.end(), changes) ||
           std::any_of(c.design.emitters.begin(), c.design.emitters.end(), emitter_changes);
}

struct Rule {
    bool (*applies)(const Context&);
    std::string_view title;
    std::string_view household;
    std::string_view installer;
};

/// In order of harm. Acts and standards are named from memory; those in force where the house stands come
/// first.
constexpr auto rules = std::to_array<Rule>({
    {replaces_gas, "Gas",
     "Gas can burn, explode and poison everyone in the house. Leave the old gas appliance, its pipe and its "
     "flue alone. Only an engineer who is registered for gas work may take it out and seal the supply. Ask "
     "to see the registration. If you smell gas: open the windows, go outside and call the gas emergency "
     "number.",
     "Gas can explode, and products of combustion poison; everyone in the house is at risk. Isolating, "
     "removing and capping the gas appliance and its flue is work for an engineer registered under the Gas "
     "Safety (Installation and Use) Regulations 1998. Do not start on the heating side until the supply is "
     "made safe and this is recorded."},
    {flammable, "Refrigerant that can burn",
     "The heat pump holds a gas that can burn. If it leaks it can gather low down and catch fire. Keep "
     "flames, sparks and smoking away from the unit. Put nothing in the clear space that its maker asks for "
     "round it: no drain, window, air brick or switch. Only people trained and certified for such a gas may "
     "open the unit.",
     "A leak of flammable refrigerant gathers low down and can ignite; those nearby are at risk. Keep the "
     "maker's exclusion zone free of drains, openings, light wells and sources of ignition, and check it on "
     "site before the unit is set down. Only persons certified for flammable refrigerants may open the "
     "circuit. The maker's instructions govern."},
    {electrical, "Electricity",
     "Electricity can kill. Wiring for the heat source and the pump is work for a competent, registered "
     "electrician. You should get a certificate for it. Do not open covers that need a tool.",
     "Electric shock kills; fitters and the household are at risk. Isolate, lock off and prove dead. New "
     "circuits are work for a competent person under Part P of the Building Regulations (England; elsewhere "
     "the local rules) and are designed, tested and certified to BS 7671. Check supply, earthing and bonding "
     "first; the network operator may have to agree to the load."},
    {lagging, "Old lagging may hold asbestos",
     "Old lagging, boards or flues in this house may hold asbestos. Its dust can cause deadly illness years "
     "later, in anyone who breathes it. Do not touch, drill or sweep it. It is to be sampled by someone "
     "competent before work starts there. Most old lagging may only be taken out by a licensed contractor.",
     "Asbestos fibres kill years after they are breathed in; fitters are most at risk. Presume that old "
     "lagging, boards and flues hold asbestos until a sample says otherwise. Stop work where it is found. "
     "Control of Asbestos Regulations 2012: work on lagging and insulating board as a rule needs a licensed "
     "contractor."},
    {unvented, "Hot water under pressure",
     "The hot water cylinder is under mains pressure. If its safety devices fail it can burst and scald. "
     "Never block or cap its valves or the pipe that leads away from them. If water runs from that pipe, "
     "call someone competent. It needs a check every year by someone qualified for such cylinders.",
     "An unvented cylinder whose safety devices fail can burst; everyone near it is at risk. Installing and "
     "servicing it is work for a person competent in unvented systems, under requirement G3 of the Building "
     "Regulations (or the local rule). Size and run the discharge pipe by the maker's instructions; never "
     "put a valve in it."},
    {store, "Germs in stored hot water",
     "Legionella germs grow in lukewarm water. Breathing in fine drops of it can cause a grave illness of "
     "the lungs. Older people and those who are ill or smoke are most at risk. So the store has to be heated "
     "through to 60 °C as the designer sets it. Do not turn this off. Water at 60 °C scalds within seconds, "
     "so mixing valves at taps must stay. After weeks away, let the taps run before you use them.",
     "Legionella grows between 20 and 45 °C and harms those who breathe in droplets; the old, the ill and "
     "smokers most. Set up the store to reach 60 °C throughout as the designer states, avoid dead legs, and "
     "fit thermostatic mixing valves where people could be scalded. HSE Approved Code of Practice L8 and "
     "guidance HSG274 describe the duties of landlords and employers, and good practice elsewhere."},
    {ethylene, "Poisonous heating water",
     "The heating water holds ethylene glycol. It tastes sweet and is poisonous: a small amount can kill a "
     "child or a pet. Never drain it yourself. If anyone swallows some, get medical help at once. Only a "
     "competent person may fill, test or take it away.",
     "Ethylene glycol is toxic if swallowed; children and pets are most at risk. Assess its use under COSHH "
     "(Control of Substances Hazardous to Health Regulations 2002), wear gloves and eye protection, label "
     "the system, and prevent any path to drinking water. Take it away as waste; never to a drain. The "
     "maker's safety data sheet governs."},
    {propylene, "Antifreeze in the heating water",
     "The heating water holds propylene glycol to stop it freezing. It is not for drinking and makes floors "
     "slippery. If it leaks, keep children and pets away and call your installer. Only a competent person "
     "may fill, test or take it away.",
     "Propylene glycol irritates eyes and skin and makes floors slippery. Assess its use under COSHH "
     "(Control of Substances Hazardous to Health Regulations 2002), follow the maker's safety data sheet, "
     "label the system with kind and concentration, and take it away as waste; never to a drain without "
     "leave."},
    {opens_fabric, "Under floors and in walls",
     "Cables, gas and water pipes lie under floors and in walls. Drilling or cutting into one can kill or "
     "flood. Tell the installer what you know of them. Keep children away from open floors. Only a competent "
     "person should cut a joist: too deep a notch weakens the floor.",
     "Hidden cables, gas and water pipes: electrocution, explosion, flood; the fitter is most at risk. Trace "
     "them before lifting boards or drilling. Keep notches and holes in joists within the local code, or ask "
     "a structural engineer. Make good fire stopping. Guard open floors. Dust of masonry and old paint "
     "harms: extract and wear a mask."},
    {always, "Hot and heavy parts",
     "Pipes and radiators can be hot to touch, above all when the system is being tested. Small children and "
     "people who cannot move away can be burnt. Do not loosen any valve that you were not shown how to use.",
     "Hot water under pressure scalds; radiators and heat sources are heavy. Let the system cool and drop "
     "the pressure before opening it. Assess lifts under the Manual Handling Operations Regulations 1992. "
     "Cleaning agents and inhibitors: follow the maker's safety data sheet; COSHH applies."},
});

constexpr std::string_view household_closing =
    "Local rules and the makers' instructions come first, before anything in this pack. The pack helps a "
    "competent designer. It never takes the place of one, and it gives nobody leave to do work that needs a "
    "licence.";
constexpr std::string_view installer_closing =
    "Local codes, the makers' instructions and licensed practice come before anything in this pack. It "
    "supports a competent designer and never replaces one. Where site and pack disagree, stop and ask the "
    "designer.";

std::vector<Caution> chosen(const Context& context, std::string_view Rule::*text, std::string_view closing) {
    std::vector<Caution> out;
    for (const auto& rule : rules) {
        if (rule.applies(context)) out.push_back({std::string{rule.title}, std::string{rule.*text}});
    }
    out.push_back({"What comes first", std::string{closing}});
    return out;
}

}   // namespace

std::vector<Caution> household_cautions(const Context& context) {
    return chosen(context, &Rule::household, household_closing);
}

std::vector<Caution> installer_cautions(const Context& context) {
    return chosen(context, &Rule::installer, installer_closing);
}

}   // namespace loopfolio::report
