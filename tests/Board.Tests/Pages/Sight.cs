namespace Board.Tests.Pages;

/// <summary>What can be seen of a page, as scripts that run in it.</summary>
internal static class Sight
{
    /// <summary>
    /// Notes when settled loads first stand on the page (as the daemon draws them), when the page's own code shows them, and every freshness
    /// that was told in between; run before the page's own scripts.
    /// </summary>
    public const string WatchForLive = """
        window.told = [];
        document.addEventListener('DOMContentLoaded', () => new MutationObserver(() => {
          const sign = document.querySelector('[data-freshness]')?.dataset.freshness;
          if (sign && window.told.at(-1) !== sign) window.told.push(sign);
          if (!document.querySelector('[data-verdict=settled]')) return;
          window.firstLive ??= performance.now();
          if (!document.querySelector('.opening')) window.ownLive ??= performance.now();
        }).observe(document.body, { childList: true, subtree: true, attributes: true }));
        """;

    /// <summary>What <see cref="WatchForLive"/> has noted, ms since the page was called for: as the daemon drew it, and by the page's own code.</summary>
    public const string FirstLive = "[window.firstLive, window.ownLive]";

    /// <summary>Texts that reach beyond their box or the sheet, or lie on another text. Empty when all is well.</summary>
    public const string CutOrCovered = """
        () => {
          const wrong = [];
          const seen = [...document.querySelectorAll('main *, header *')].filter(e =>
            !e.closest('.unseen, .skip, select, .wide, details:not([open]) > :not(summary)') && e.checkVisibility({ visibilityProperty: true }) &&
            getComputedStyle(e).clipPath !== 'inset(50%)' &&
            [...e.childNodes].some(n => n.nodeType === Node.TEXT_NODE && n.textContent.trim()));
          const boxes = seen.map(e => {
            // Its own letters only: what lies in it is seen by itself.
            const range = document.createRange();
            const own = [...e.childNodes].filter(n => n.nodeType === Node.TEXT_NODE && n.textContent.trim());
            range.setStartBefore(own[0]);
            range.setEndAfter(own[0]);
            return { e, box: range.getBoundingClientRect(), text: own[0].textContent.trim().slice(0, 40) };
          }).filter(b => b.box.width > 0);
          const wide = document.documentElement.clientWidth;
          if (document.documentElement.scrollWidth > wide) wrong.push(`the sheet is ${document.documentElement.scrollWidth} wide`);
          for (const b of boxes) {
            if (b.box.left < -0.5 || b.box.right > wide + 0.5) wrong.push(`beyond the sheet: ${b.text}`);
            const holder = b.e.closest('.corner, .cross, .next, .verdict, .pad, .shares, .trace, .check, .tap, .bubble, .slide, button');
            const held = holder?.getBoundingClientRect();
            if (held && (b.box.right > held.right + 1 || b.box.bottom > held.bottom + 1 || b.box.top < held.top - 4)) wrong.push(`beyond its box: ${b.text}`);
          }
          for (const a of boxes) for (const b of boxes) {
            if (a === b || a.e.contains(b.e) || b.e.contains(a.e) || a.e.closest('nav') || b.e.closest('nav')) continue;
            // Runs of one paragraph share its lines.
            if (a.e.parentElement === b.e.parentElement && [a, b].every(x => getComputedStyle(x.e).display === 'inline')) continue;
            const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
            const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
            // Line boxes may touch; letters may not.
            if (across > 2 && down > 0.35 * Math.min(a.box.height, b.box.height)) wrong.push(`${a.text} lies on ${b.text}`);
          }
          return [...new Set(wrong)];
        }
        """;

    /// <summary>Height of the digit 8 at a selector, CSS pixels, from the metrics of its own face.</summary>
    public const string DigitHeight = """
        selector => {
          const style = getComputedStyle(document.querySelector(selector));
          const pen = document.createElement('canvas').getContext('2d');
          pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
          const size = pen.measureText('8');
          return size.actualBoundingBoxAscent + size.actualBoundingBoxDescent;
        }
        """;

    /// <summary>Where the parts of the live view stand, as one text: what changes it, jumps.</summary>
    public const string Places = """
        () => ['.verdict', '.cross', '.aim', '.beam', '.corner.lf', '.corner.rf', '.corner.lr', '.corner.rr', '.next', '.trace', '.shares'].map(s => {
          const box = document.querySelector(s).getBoundingClientRect();
          return `${s} ${box.left.toFixed(0)} ${box.top.toFixed(0)} ${box.width.toFixed(0)}`;
        }).join('\n')
        """;

    /// <summary>Opens what is folded away, and the longer of two forms. Raw traces stay closed: each takes a connection.</summary>
    public const string Unfold = """
        () => {
          for (const d of document.querySelectorAll('main details')) d.open = !d.closest('.pad');
          document.querySelector('[name=height-measurement-by][value=differences]')?.click();
        }
        """;

    /// <summary>Names of everything on the page that can be done.</summary>
    public const string Doable = """
        () => {
          const groups = new Set();
          return [...document.querySelectorAll('a[href], button, input, select, summary')].filter(e => {
            if (e.disabled || !e.checkVisibility({ visibilityProperty: true })) return false;
            if (e.type !== 'radio') return true;
            return e.checked && !groups.has(e.name) && groups.add(e.name);
          }).map(e => `${e.tagName} ${e.name || ''} ${(e.textContent || e.value).trim()} ${e.closest('[data-pad]')?.dataset.pad || ''}`);
        }
        """;

    /// <summary>Name of what has the focus, as in <see cref="Doable"/>.</summary>
    public const string Focused = """
        () => { const e = document.activeElement; return `${e.tagName} ${e.name || ''} ${(e.textContent || e.value || '').trim()} ${e.closest('[data-pad]')?.dataset.pad || ''}`; }
        """;

    /// <summary>Tells the page that it is unseen, or seen again, as a browser does when another tab comes to the front.</summary>
    public const string Unseen = """
        isUnseen => {
          Object.defineProperty(document, 'hidden', { value: isUnseen, configurable: true });
          document.dispatchEvent(new Event('visibilitychange'));
        }
        """;
}
