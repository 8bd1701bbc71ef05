// Runs inside a page, at whatever width it is laid out: an array of sentences, one for each thing that does not fit.
(() => {
    const faults = [];
    const width = document.documentElement.clientWidth;
    const told = (element) => JSON.stringify(element.textContent.trim().replace(/\s+/g, ' ').slice(0, 40));

    if (document.scrollingElement.scrollWidth > document.scrollingElement.clientWidth)
        faults.push(`scrolls sideways: ${document.scrollingElement.scrollWidth} in ${width} pixels`);
    for (const element of document.body.querySelectorAll('*')) {
        if (element instanceof SVGElement) continue;
        // Inline elements have no width of their own: their block speaks for them.
        if (element.clientWidth > 0 && element.scrollWidth > element.clientWidth + 1)
            faults.push(`<${element.localName}> ${told(element)} is ${element.scrollWidth} wide in ${element.clientWidth}`);
    }

    const svgs = [...document.querySelectorAll('svg')];
    if (svgs.length === 0) faults.push('holds no drawing');
    for (const svg of svgs) {
        const name = svg.getAttribute('aria-labelledby') ?? 'a drawing';
        const box = svg.viewBox.baseVal;
        const unitsFromPixels = svg.getScreenCTM().inverse();
        const inUnits = (x, y) => new DOMPoint(x, y).matrixTransform(unitsFromPixels);
        const words = [...svg.querySelectorAll('text')].map((element) => {
            const at = element.getBoundingClientRect();
            const low = inUnits(at.left, at.top), high = inUnits(at.right, at.bottom);
            // A line's box holds room for accents and tails, which numbers and most letters leave empty.
            const spare = 0.2 * (high.y - low.y);
            return { text: told(element), left: low.x, right: high.x, top: low.y + spare, bottom: high.y - spare };
        });
        for (const [i, a] of words.entries()) {
            if (a.left < box.x - 0.5 || a.right > box.x + box.width + 0.5 || a.top < box.y || a.bottom > box.y + box.height)
                faults.push(`${name}: ${a.text} reaches out of the drawing`);
            for (const b of words.slice(i + 1)) {
                const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
                const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
                if (across > 1 && down > 1) faults.push(`${name}: ${a.text} lies over ${b.text}`);
            }
        }
    }
    return faults;
})()
