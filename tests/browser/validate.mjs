// Holds a .glb against the glTF validator: no error, no warning.
import { readFileSync } from 'node:fs';
import validator from 'gltf-validator';

const report = await validator.validateBytes(new Uint8Array(readFileSync(process.argv[2])));
const { numErrors, numWarnings, messages } = report.issues;
for (const message of messages.slice(0, 10)) console.log(`${message.code} ${message.pointer}: ${message.message}`);
process.exit(numErrors + numWarnings === 0 && report.info.totalTriangleCount > 0 ? 0 : 1);
