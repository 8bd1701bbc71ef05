// Opens pages in Chromium: are they complete in themselves and does everything fit, on screen and on paper?
//
//   node tests/exports/pages.mjs FOLDER PAGE.html...
//
// For every page FOLDER gets a picture of it, 1280 pixels wide (.png), and unless it is the night variant the printed
// page (.a4.pdf, .letter.pdf). Prints a line for each fault; exit status 1 if there is one.
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Browser } from './browser.mjs';

const screenWidths = [1280, 800];
// ISO 216 A4, 210 x 297 mm; US letter, ANSI/ASME Y14.1 size A. Inches are what the protocol asks for.
const papers = { a4: { width: 210 / 25.4, height: 297 / 25.4 }, letter: { width: 8.5, height: 11 } };
const marginsBesideText = 20 / 25.4;  // assets/sheet.css, @page
const pageFaults = readFileSync(new URL('page_faults.js', import.meta.url), 'utf8');

/// What an event of the protocol says against the page; null where it says nothing.
function complaint({ method, params }, url) {
    switch (method) {
    case 'Network.requestWillBeSent':
        return [url, 'data:'].some((own) => params.request.url.startsWith(own)) ? null : `asks for ${params.request.url}`;
    case 'Network.loadingFailed':
        return `a request failed: ${params.errorText}`;
    case 'Runtime.exceptionThrown':
        return `throws: ${params.exceptionDetails.text}`;
    case 'Runtime.consoleAPICalled':
        return `console.${params.type}: ${params.args.map((value) => value.value).join(' ')}`;
    case 'Log.entryAdded':
        return `${params.entry.level}: ${params.entry.text}`;
    default:
        return null;
    }
}

async function look(browser, file, folder) {
    const url = pathToFileURL(resolve(file)).href;
    const name = basename(file, '.html');
    const faults = [];
    const { targetId } = await browser.send('Target.createTarget', { url: 'about:blank' });
    const { sessionId } = await browser.send('Target.attachToTarget', { targetId, flatten: true });
    const send = (method, params) => browser.send(method, params, sessionId);
    const write = (ending, { data }) => writeFileSync(join(folder, name + ending), data, 'base64');
    let loaded;
    const isLoaded = new Promise((resolveLoaded) => { loaded = resolveLoaded; });
    const deaf = browser.listen((event) => {
        if (event.sessionId !== sessionId) return;
        if (event.method === 'Page.loadEventFired') loaded();
        const fault = complaint(event, url);
        if (fault) faults.push(fault);
    });
    const fits = async (width, media, where) => {
        await send('Emulation.setEmulatedMedia', { media });
        await send('Emulation.setDeviceMetricsOverride',
            { width: Math.floor(width), height: 900, deviceScaleFactor: 1, mobile: false });
        const { result } = await send('Runtime.evaluate', { expression: pageFaults, returnByValue: true });
        if (!Array.isArray(result.value)) throw new Error(`page_faults.js: ${result.description}`);
        faults.push(...result.value.map((fault) => `${where}: ${fault}`));
    };

    for (const domain of ['Page', 'Network', 'Runtime', 'Log']) await send(`${domain}.enable`);
    const { errorText } = await send('Page.navigate', { url });
    if (errorText) throw new Error(`${file}: ${errorText}`);
    await isLoaded;
    await send('Runtime.evaluate', { expression: 'document.fonts.ready', awaitPromise: true });
    for (const width of screenWidths) {
        await fits(width, 'screen', `${width} pixels wide`);
        if (width === screenWidths[0])
            write('.png', await send('Page.captureScreenshot', { captureBeyondViewport: true }));
    }
    const { result: night } = await send('Runtime.evaluate',
        { expression: 'document.documentElement.classList.contains("night")', returnByValue: true });
    for (const [paper, { width, height }] of night.value ? [] : Object.entries(papers)) {
        await fits(96 * (width - marginsBesideText), 'print', paper);
        const order = { paperWidth: width, paperHeight: height, printBackground: true };
        write(`.${paper}.pdf`, await send('Page.printToPDF', order));
    }
    deaf();
    await browser.send('Target.closeTarget', { targetId });
    return [...new Set(faults)].map((fault) => `${basename(file)}: ${fault}`);
}

const [folder, ...files] = process.argv.slice(2);
const browser = new Browser();
const faults = [];
try {
    for (const file of files) faults.push(...await look(browser, file, folder));
} finally {
    await browser.close();
}
for (const fault of faults) console.log(fault);
process.exitCode = faults.length > 0 ? 1 : 0;
