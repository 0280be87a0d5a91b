using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Google.Protobuf.WellKnownTypes;
using ScaleLink.Api.V1;
using ScaleLink.Daemon.Workflows.Calibration.Export;

namespace Daemon.Tests.Workflows.Calibration.Export;

/// <summary>Reports of a calibration procedure whose people write what they should not.</summary>
public class ProcedureSheetTests
{
    private const string Evil = "<script>alert(1)</script>\"'&=cmd|x,\r\n@";
    private static readonly DateTimeOffset Made = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void In_the_page_every_word_of_people_is_only_text()
    {
        var html = Export(ExportFormat.Html);
        Assert.DoesNotContain("<script", html);
        Assert.DoesNotContain("alert(1)<", html);
        Assert.Contains("&lt;script&gt;", html);
        Assert.Contains("not approved for trade weighing", html);
        // Well-formed but for the head's void elements: nothing that was put in has broken out.
        var body = html[html.IndexOf("<body>", StringComparison.Ordinal)..html.IndexOf("</html>", StringComparison.Ordinal)];
        Assert.NotEmpty(XElement.Parse(Regex.Replace(body, "&(?!amp;|lt;|gt;|quot;|#)\\w+;", "?")).Descendants("table"));
    }

    [Fact]
    public void The_drawing_has_a_mark_for_each_residual_and_shapes_for_both_ways()
    {
        var html = Export(ExportFormat.Html);
        Assert.Equal(2, Regex.Count(html, "class=\"up\"/>"));
        Assert.Single(Regex.Matches(html, "class=\"down\"/>"));
    }

    [Fact]
    public void In_the_table_no_field_begins_a_formula_and_no_line_breaks_out()
    {
        var lines = Export(ExportFormat.Csv).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(3, lines.Count(l => !l.StartsWith('#')) - 1);
        Assert.Contains(lines, l => l.Contains("\"'=SUM(A1) + 20 A\""));
        Assert.All(lines.Where(l => !l.StartsWith('#')).Skip(1), l => Assert.Matches("^\\d+,repetition,1,", l));
    }

    [Fact]
    public void The_data_are_valid_and_the_file_name_is_safe()
    {
        var file = Sheet().As(ExportFormat.Json);
        Assert.Equal("17", JsonDocument.Parse(file.Content.ToStringUtf8()).RootElement.GetProperty("procedure_id").GetString());
        Assert.Matches("^[A-Za-z0-9_-]+\\.json$", file.FileName);
    }

    private static string Export(ExportFormat format) => Sheet().As(format).Content.ToStringUtf8();

    private static ProcedureSheet Sheet()
    {
        var time = Timestamp.FromDateTimeOffset(Made);
        var procedure = new ProcedureView
        {
            ProcedureId = "17", SerialNumber = "../" + Evil, State = ProcedureState.Adopted, Corner = Corner.Lf, BegunAt = time, BegunBy = Evil,
            Ending = new ProcedureEnding { Time = time, Who = Evil, Reason = Evil },
            Masses = { new MassRecord { Label = Evil, Kg = 20, ToleranceKg = 0.001, StandardUncertaintyKg = 0.0006, Lot = Evil } },
            Result = new ProcedureResult
            {
                Calibration = new CalibrationSummary { Id = new string('b', 64), Place = Evil, CellTrim = { 1, 1 } },
                AccuracyClass = Evil, NotCovered = { Evil }, TakenAsUsual = { Evil }, Shifts = { new Shift { What = Evil } }, Refusals = { new ScaleLink.Api.V1.Diagnostic { Code = "SL-301", Message = Evil, Remedy = Evil } },
                Budgets = { new LoadBudget { LoadKg = 100, Terms = { new BudgetTerm { Name = Evil } } } }, Characteristics = new Characteristics { NonLinearity = new FoundAt { Kg = 0.02, LoadKg = 50 } },
            },
        };
        foreach (var (label, down) in (IEnumerable<(string, bool)>)[("=SUM(A1)", false), ("20 B", false), (Evil, true)])
            procedure.Points.Add(new ProcedurePoint { Number = 1, Stage = ProcedureStage.Repetitions, Repetition = 1, WayDown = down, Time = time, LoadKg = 20, ResidualKg = 0.01, Load = new LoadStack { Masses = { label.ReplaceLineEndings(" "), "20 A" } } });
        return new ProcedureSheet(procedure, "unit6", Made);
    }
}
