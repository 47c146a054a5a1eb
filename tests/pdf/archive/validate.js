// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
//
// validate.js FLAVOUR,... FILE...: validates each file with veraPDF against each flavour (3a, ua1 and their like) and
// prints what fails, each rule once.
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

var flavours = arguments[0].split(","), files = arguments.slice(1);
var bad = files.length == 0;
files.forEach(function (file) {
    flavours.forEach(function (id) {
        try {
            if (!conforms(pdfa.flavours.PDFAFlavour.byFlavourId(id), file)) bad = true;
        } catch (failure) {
            print(file + ": " + failure.message);
            bad = true;
        }
    });
});
if (bad) quit(1);
