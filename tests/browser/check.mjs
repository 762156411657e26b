// Opens pages in a browser and tells what is wrong with them, one line of JSON a problem:
//     node check.mjs PAGE.html ...
// SILLMARK_BROWSER_MODULES names the folder that holds puppeteer-core and axe-core.
import { createRequire } from 'node:module';
import { readFileSync, existsSync } from 'node:fs';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';

const require = createRequire(`${process.env.SILLMARK_BROWSER_MODULES}/node_modules/`);
const { default: puppeteer } = await import(
    pathToFileURL(require.resolve('puppeteer-core')).href
);
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const chromium = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find(existsSync);

const browser = await puppeteer.launch({
    executablePath: chromium,
    args: ['--no-sandbox', '--disable-dev-shm-usage', '--force-device-scale-factor=1'],
});
let checked = 0;
for (const path of process.argv.slice(2)) {
    const tell = (check, what) =>
        console.log(JSON.stringify({ page: basename(path), check, what }));
    const page = await browser.newPage();
    page.on('console', (message) => {
        if (['error', 'warn'].includes(message.type())) tell('console', message.text());
    });
    page.on('pageerror', (error) => tell('script', String(error)));
    const own = pathToFileURL(path).href;
    await page.setRequestInterception(true);
    page.on('request', (request) => {
        const inside = request.url() === own || request.url().startsWith('data:');
        if (!inside) tell('request', request.url());
        inside ? request.continue() : request.abort();
    });
    page.on('dialog', async (dialog) => {
        tell('dialog', dialog.message());
        await dialog.dismiss();
    });

    // As read on a screen, on a phone, and on paper between margins of 15 mm (at 96 px an inch).
    for (const [medium, width] of [
        ['screen', 1000],
        ['screen', 390],
        ['print', 680],
        ['print', 702],
    ]) {
        await page.emulateMediaType(medium);
        await page.setViewport({ width, height: 1000 });
        await page.goto(own, { waitUntil: 'load' });
        for (const found of await page.evaluate(layoutProblems, width)) {
            tell(`${medium} of ${width} px`, found);
        }
    }
    for (const format of ['A4', 'Letter']) {
        const pdf = await page.pdf({ format });
        if (!Buffer.from(pdf.subarray(0, 5)).equals(Buffer.from('%PDF-'))) {
            tell('print', `${format} gives no PDF`);
        }
    }
    await page.emulateMediaType('screen');
    await page.setViewport({ width: 1000, height: 1000 });
    await page.evaluate(axe);
    const found = await page.evaluate(() => window.axe.run(document));
    if (found.passes.length === 0) tell('axe', 'no rule was run');
    for (const violation of found.violations) {
        if (['serious', 'critical'].includes(violation.impact)) {
            const where = violation.nodes.slice(0, 3).map((node) => node.html.slice(0, 160));
            tell('axe', `${violation.id}: ${violation.help}: ${where.join(' | ')}`);
        }
    }
    checked += 1;
    await page.close();
}
await browser.close();
console.log(JSON.stringify({ checked }));

// Runs in the page: texts that lie over each other or leave their drawing, and boxes that are
// wider than the page.
function layoutProblems(width) {
    const problems = [];
    const root = document.documentElement;
    if (root.scrollWidth > width) {
        problems.push(`the page is ${root.scrollWidth} px wide`);
    }
    const short = (text) => JSON.stringify(text.trim().slice(0, 50));
    for (const element of document.querySelectorAll('p, li, h1, h2, h3, h4, dd, dt, th, td, code')) {
        // A box that scrolls by itself may be wider within.
        const scrolls = element.closest('.wide');
        const room = scrolls ? scrolls.scrollWidth : width;
        const box = element.getBoundingClientRect();
        const start = scrolls ? scrolls.getBoundingClientRect().left : 0;
        if (box.right - start > room + 1) problems.push(`${short(element.textContent)} leaves the page`);
        if (element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0) {
            problems.push(`${short(element.textContent)} is wider than its box`);
        }
    }
    for (const tag of document.querySelectorAll('.tag')) {
        const words = tag.textContent.trim().split(/\s+/).length;
        const range = document.createRange();
        range.selectNodeContents(tag);
        const lines = new Set([...range.getClientRects()].map((box) => Math.round(box.top))).size;
        if (lines > words) problems.push(`${short(tag.textContent)} is broken within a word`);
    }
    const wide = [...document.querySelectorAll('.wide')];
    if (width > 600) {
        for (const box of wide.filter((box) => box.scrollWidth > box.clientWidth + 1)) {
            problems.push(`a table of ${box.scrollWidth} px in ${box.clientWidth}: ${short(box.textContent)}`);
        }
    }
    for (const drawing of document.querySelectorAll('svg')) {
        const frame = drawing.getBoundingClientRect();
        const scale = frame.width / (drawing.viewBox.baseVal.width || frame.width);
        const texts = [...drawing.querySelectorAll('text')]
            .filter((text) => text.textContent.trim() !== '')
            .map((text) => ({ text: text.textContent, box: text.getBoundingClientRect() }));
        const name = drawing.querySelector('title')?.textContent ?? '';
        for (const { text, box } of texts) {
            const out = Math.max(
                frame.left - box.left,
                box.right - frame.right,
                frame.top - box.top,
                box.bottom - frame.bottom,
            );
            if (out > 1.5 * scale) problems.push(`${short(text)} leaves the drawing ${short(name)}`);
        }
        // Boxes hold the room of the whole line, so neighbours may touch by a little.
        const least = 3 * scale;
        for (let one = 0; one < texts.length; one += 1) {
            for (let two = one + 1; two < texts.length; two += 1) {
                const [a, b] = [texts[one].box, texts[two].box];
                const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
                const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
                if (across > least / 2 && down > least) {
                    problems.push(
                        `${short(texts[one].text)} lies over ${short(texts[two].text)} in ${short(name)}`,
                    );
                }
            }
        }
    }
    return problems;
}
