// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include "loopfolio/record/record.hpp"

#include "support/catch.hpp"

using loopfolio::record::sha256;

// Messages and digests published by NIST with FIPS 180-4: the SHA-256 examples, and for the empty message the CAVP
// vectors (SHA256ShortMsg, Len = 0).
TEST_CASE("SHA-256 gives the published digests") {
    CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256(std::string(1000000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("a zero byte is a byte like any other") { CHECK(sha256(std::string(1, '\0')) != sha256("")); }
