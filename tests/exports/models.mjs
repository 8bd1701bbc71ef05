// Models through the validator of the body that publishes glTF 2.0 (ISO/IEC 12113).
//
//   node tests/exports/models.mjs VALIDATOR MODEL.glb...
//
// VALIDATOR is the folder of the npm package gltf-validator. Errors and warnings are faults: a line each, exit status
// 1. Infos and hints are counted.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, resolve } from 'node:path';

const [folder, ...files] = process.argv.slice(2);
const validator = createRequire(import.meta.url)(resolve(folder));
const severities = ['error', 'warning', 'info', 'hint'];
const told = new Map();
let faults = 0;

for (const file of files) {
    const bytes = new Uint8Array(readFileSync(file));
    const { issues, info } = await validator.validateBytes(bytes, { uri: basename(file), maxIssues: 0 })
        .catch((error) => ({ issues: { messages: [{ severity: 0, code: 'NOT_GLTF', message: String(error) }] } }));
    for (const { severity, code, message, pointer } of issues.messages) {
        if (severity <= 1) {
            faults += 1;
            console.log(`${basename(file)}: ${severities[severity]} ${code}: ${message} (${pointer ?? 'the file'})`);
        } else {
            const key = `${severities[severity]} ${code}: ${message}`;
            told.set(key, (told.get(key) ?? 0) + 1);
        }
    }
    if (info && info.totalTriangleCount === 0) {
        faults += 1;
        console.log(`${basename(file)}: holds no triangle`);
    }
}
for (const [what, times] of told) console.log(`${times} x ${what}`);
process.exitCode = faults > 0 ? 1 : 0;
