using System.Text;
using ScaleLink.Measure.Diagnostics;

namespace Measure.Tests.Diagnostics;

/// <summary>docs/codes.md, as the catalogue has it.</summary>
internal static class CodePage
{
    public static string Of(IEnumerable<CodeArea> areas)
    {
        var page = new StringBuilder();
        page.Append("# Codes\n\n");
        page.Append("What can be wrong has a code that never changes its meaning and is never used again. It stands at the end of the sentence that tells the case, with its figures and what to do.\n");
        page.Append("This page is written from the catalogue (`src/Measure/Diagnostics`); a test compares the two, and `SCALELINK_APPROVE=1` writes it anew.\n");
        foreach (var area in areas)
        {
            page.Append($"\n## {area.Title}\n\n{area.About}\n\n| code | what it means | what to do |\n|---|---|---|\n");
            foreach (var code in area.Codes)
                page.Append($"| {code} | {code.Meaning} | {code.Remedy} |\n");
        }

        return page.ToString();
    }
}
