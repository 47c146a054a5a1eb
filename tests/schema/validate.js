// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
//
// Prints, for each document of a list, whether a JSON Schema accepts it: a second validator beside that of schema_test.py.
//
//     nodejs validate.js SCHEMA.json DOCUMENTS.json
//
// Debian's ajv knows draft 7. The keywords that our schemas have mean the same there as in draft 2020-12, but for words
// beside `$ref`, of which ours are descriptions alone.
const fs = require("fs");
const Ajv = require("ajv");

const schema = JSON.parse(fs.readFileSync(process.argv[2], "utf8"));
delete schema.$schema;
const accepts = new Ajv({ schemaId: "auto" }).compile(schema);
for (const document of JSON.parse(fs.readFileSync(process.argv[3], "utf8"))) {
    console.log(accepts(document) ? "accepted" : "refused");
}
