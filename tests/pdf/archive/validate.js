// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
//
// validate.js FLAVOUR FILE...: validates each file with veraPDF and prints what fails, each rule once.
// Ends with 1 where a file does not conform or was not looked at.
var pdfa = Packages.org.verapdf.pdfa;
Packages.org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider.initialise();

function failures(result) {
    var seen = {};
    for (var i = result.getTestAssertions().iterator(); i.hasNext();) {
        var assertion = i.next();
        if (assertion.getStatus().name() != "FAILED") continue;
        var rule = assertion.getRuleId();
        var name = rule.getClause() + ", test " + rule.getTestNumber();
        if (seen[name]) continue;
        seen[name] = true;
        print("  " + name + ": " + assertion.getMessage());
        print("    at " + assertion.getLocation().getContext());
    }
}

function conforms(flavour, name) {
    var parser = pdfa.Foundries.defaultInstance().createParser(new java.io.File(name), flavour);
    try {
        var result = pdfa.Foundries.defaultInstance().createValidator(flavour, false).validate(parser);
        print(name + ": " + (result.isCompliant() ? "conforms to " : "does not conform to ") + flavour +
              " (" + result.getTotalAssertions() + " checks)");
        if (!result.isCompliant()) failures(result);
        return result.isCompliant() && result.getTotalAssertions() > 0;
    } finally {
        parser.close();
    }
}

var flavour = pdfa.flavours.PDFAFlavour.byFlavourId(arguments[0]);
var bad = arguments.length < 2;
for (var i = 1; i < arguments.length; ++i) {
    try {
        if (!conforms(flavour, arguments[i])) bad = true;
    } catch (failure) {
        print(arguments[i] + ": " + failure.message);
        bad = true;
    }
}
if (bad) quit(1);
