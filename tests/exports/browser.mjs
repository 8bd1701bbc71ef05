// A headless Chromium, spoken to in its own DevTools protocol over a pipe: JSON messages, each ended by a zero byte,
// which Chromium reads from file descriptor 3 and writes to 4. No port, no package.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const flags = [
    '--headless', '--remote-debugging-pipe', '--disable-gpu', '--no-first-run', '--hide-scrollbars',
    // Chromium itself calls nobody, and a page that tries finds no name server.
    '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic',
    '--host-resolver-rules=MAP * ~NOTFOUND',
];

export class Browser {
    #process;
    #ended;
    #profile = mkdtempSync(join(tmpdir(), 'beamfork-exports-'));
    #last = 0;
    #waiting = new Map();
    #listeners = new Set();
    #unread = '';

    constructor(program = 'chromium') {
        const ofRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
        this.#process = spawn(program, [...flags, ...ofRoot, `--user-data-dir=${this.#profile}`, 'about:blank'],
            { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
        this.#ended = new Promise((resolve) => {
            this.#process.on('error', (error) => { this.#giveUp(error); resolve(); });
            this.#process.on('exit', () => { this.#giveUp(new Error(`${program} has ended`)); resolve(); });
        });
        for (const pipe of [3, 4]) this.#process.stdio[pipe].on('error', (error) => this.#giveUp(error));
        this.#process.stdio[4].setEncoding('utf8').on('data', (text) => this.#read(text));
    }

    /// The answer to one command of the protocol; an answer that is an error is thrown.
    send(method, params = {}, sessionId = undefined) {
        const id = ++this.#last;
        this.#process.stdio[3].write(JSON.stringify({ id, method, params, sessionId }) + '\0');
        return new Promise((resolve, reject) => this.#waiting.set(id, { method, resolve, reject }));
    }

    /// Calls with every event of the protocol until the returned function is called.
    listen(heard) {
        this.#listeners.add(heard);
        return () => this.#listeners.delete(heard);
    }

    async close() {
        this.send('Browser.close').catch(() => {});
        await this.#ended;
        rmSync(this.#profile, { recursive: true, force: true, maxRetries: 5 });
    }

    #read(text) {
        const messages = (this.#unread + text).split('\0');
        this.#unread = messages.pop();
        for (const message of messages.map((part) => JSON.parse(part))) {
            if (message.id === undefined) {
                for (const heard of this.#listeners) heard(message);
                continue;
            }
            const { method, resolve, reject } = this.#waiting.get(message.id);
            this.#waiting.delete(message.id);
            if (message.error) reject(new Error(`${method}: ${message.error.message}`));
            else resolve(message.result);
        }
    }

    #giveUp(error) {
        for (const { reject } of this.#waiting.values()) reject(error);
        this.#waiting.clear();
    }
}
