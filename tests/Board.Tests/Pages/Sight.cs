namespace Board.Tests.Pages;

/// <summary>What can be seen of a page, as scripts that run in it.</summary>
internal static class Sight
{
    /// <summary>Texts that reach beyond their box or the sheet, or lie on another text. Empty when all is well.</summary>
    public const string CutOrCovered = """
        () => {
          const wrong = [];
          const seen = [...document.querySelectorAll('main *, header *')].filter(e =>
            !e.closest('.unseen, .skip, details:not([open]) > :not(summary)') && e.checkVisibility() &&
            [...e.childNodes].some(n => n.nodeType === Node.TEXT_NODE && n.textContent.trim()));
          const boxes = seen.map(e => {
            const range = document.createRange();
            range.selectNodeContents(e);
            return { e, box: range.getBoundingClientRect(), text: e.textContent.trim().slice(0, 40) };
          }).filter(b => b.box.width > 0);
          const wide = document.documentElement.clientWidth;
          for (const b of boxes) {
            if (b.box.left < -0.5 || b.box.right > wide + 0.5) wrong.push(`beyond the sheet: ${b.text}`);
            const holder = b.e.closest('.corner, .cross, .next, .verdict, .pad, .shares, .trace');
            const held = holder?.getBoundingClientRect();
            if (held && (b.box.right > held.right + 1 || b.box.bottom > held.bottom + 1 || b.box.top < held.top - 4)) wrong.push(`beyond its box: ${b.text}`);
          }
          for (const a of boxes) for (const b of boxes) {
            if (a === b || a.e.contains(b.e) || b.e.contains(a.e) || a.e.closest('nav') || b.e.closest('nav')) continue;
            const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
            const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
            // Line boxes may touch; letters may not.
            if (across > 2 && down > 0.35 * Math.min(a.box.height, b.box.height)) wrong.push(`${a.text} lies on ${b.text}`);
          }
          return [...new Set(wrong)];
        }
        """;
}
