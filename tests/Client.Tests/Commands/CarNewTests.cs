using Client.Tests.Terminal;
using ScaleLink.Client;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;

namespace Client.Tests.Commands;

/// <summary>A car by questions, answered by scripts: other units, steps back, wrong answers, and an end in the middle.</summary>
public sealed class CarNewTests : IDisposable
{
    private const double K = 1.959964;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-car-new-");

    private string Path => System.IO.Path.Combine(_folder.FullName, "car.json");

    private static string[] Rest(int answered) => [.. Enumerable.Repeat("", 21 - answered)];

    [Fact]
    public async Task Each_answer_may_have_a_unit_of_its_own()
    {
        // 1 lb/in = 0.175 126 8 N/mm, 1 in = 25.4 mm (NIST Special Publication 811:2008, appendix B.8; the first from memory).
        await Run(0, ["Heron", "2.45 m", "59 in +-0.1 in", "148 cm +- 5 mm", "400 lb/in +-5 %", "0.85 +- 0.02", "?", "2 +-0.02", .. Rest(8)]);
        var car = Car();
        Assert.Equal((2450, 3), (car.WheelbaseMm.Estimate, car.WheelbaseMm.StandardUncertainty));
        Assert.Equal(1498.6, car.FrontTrackMm.Estimate, 1e-9);
        Assert.Equal(2.54 / K, car.FrontTrackMm.StandardUncertainty, 1e-3);
        Assert.Equal((1480, 5 / K), (car.RearTrackMm.Estimate, car.RearTrackMm.StandardUncertainty), (a, b) => a.Item1 == b.Item1 && Math.Abs(a.Item2 - b.Item2) < 1e-3);
        var spring = car.Suspension.LF.SpringRateNPerMm;
        Assert.Equal(400 * 0.1751268, spring.Estimate, 1e-4);
        Assert.Equal(0.05 * spring.Estimate / K, spring.StandardUncertainty, 1e-3);
        Assert.True(car.Suspension.LF.TyreRateNPerMm.Assumed);
        Assert.False(car.Suspension.LF.SpringRateNPerMm.Assumed);
        Assert.Null(car.FrontBar);
    }

    [Fact]
    public async Task A_terminal_in_pounds_and_inches_asks_in_them()
    {
        var text = await Run(0, ["Heron", "96.5", "59", "58.25", "400", .. Rest(5)], "--units", "lb-in");
        Assert.Contains("Wheelbase, in:", text);
        Assert.Contains("Rear spring rate, lb/in (Enter: a guess, 343 ±280)", text);
        Assert.Equal(96.5 * 25.4, Car().WheelbaseMm.Estimate, 1e-9);
        Assert.Equal(400 * 0.1751268, Car().Suspension.LF.SpringRateNPerMm.Estimate, 1e-4);
        Assert.Equal(60, Car().Suspension.LR.SpringRateNPerMm.Estimate);
    }

    [Fact]
    public async Task What_is_wrong_is_asked_again_with_the_reason()
    {
        var text = await Run(0, ["", "Heron", "two metres", "2450 kg", "", "58.3", "2450", "2450 +- 3 N/mm", "1500", "1480", "3", "70", "2,5", "1e999", .. Rest(5)]);
        Assert.Contains("A name is needed here", text);
        Assert.Contains("\"two metres\" is no number", text);
        Assert.Contains("kg is no unit of this: mm, cm, m or in.", text);
        Assert.Contains("A number is needed here", text);
        Assert.Contains("The wheelbase is 58.3 mm. Expected 500 to 6000 mm", text);
        Assert.Contains("N/mm is no unit of this", text);
        Assert.Contains("Expected 5 to 1000 N/mm", text);
        Assert.Contains("\"2,5\" is no number", text);
        Assert.Equal(70, Car().Suspension.LF.SpringRateNPerMm.Estimate);
    }

    [Fact]
    public async Task One_goes_back_as_far_as_one_likes_and_what_was_answered_stands_there()
    {
        var text = await Run(0, ["<", "Heron", "2450", "1500", "<", "<", "2460", "", "1480", "70", "<", "?", .. Rest(5)]);
        Assert.Contains("Front track, mm (Enter: 1500 mm, as answered)", text);
        Assert.Equal((2460, 1500), (Car().WheelbaseMm.Estimate, Car().FrontTrackMm.Estimate));
        Assert.True(Car().Suspension.LF.SpringRateNPerMm.Assumed);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Whoever_leaves_goes_on_there_the_next_time(bool bySign)
    {
        var left = await Run(1, ["Heron", "96.5", "59", .. bySign ? ["!"] : Array.Empty<string>()], "--units", "lb-in");
        Assert.Contains("SL-447", left);
        Assert.False(File.Exists(Path));
        // The draft means the same on a terminal with other units.
        var text = await Run(0, ["1480", .. Rest(4)]);
        Assert.Contains("Taken up: 3 of 21 answers", text);
        Assert.Equal(96.5 * 25.4, Car().WheelbaseMm.Estimate, 1e-9);
        Assert.False(File.Exists(Path + ".draft"));
    }

    [Fact]
    public async Task A_damaged_draft_is_told_and_left_out()
    {
        await File.WriteAllTextAsync(Path + ".draft", "{ \"name\": 3", TestContext.Current.CancellationToken);
        Assert.Contains("cannot be read: it is left out", await Run(1, []));
        await File.WriteAllTextAsync(Path + ".draft", "{ \"name\": \"Heron\", \"wheelbase\": \"3 mm\", \"front track\": \"1500 mm\" }", TestContext.Current.CancellationToken);
        Assert.Contains("Taken up: 1 of 21", await Run(1, []));
    }

    [Fact]
    public async Task Where_no_draft_can_be_written_that_is_said_once()
    {
        var path = System.IO.Path.Combine(_folder.FullName, "nowhere", "car.json");
        var output = new StringWriter();
        var shell = Shells.Redirected(output, output) with { In = new StringReader("Heron\n2450\n1500\n") };
        Assert.Equal(1, await CommandLine.Run(["car", "new", path], shell, TestContext.Current.CancellationToken));
        Assert.Equal(2, output.ToString().Split("cannot be kept").Length);
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private CarModel Car() => CarFile.Read(File.ReadAllText(Path)).Car!;

    private async Task<string> Run(int code, string[] answers, params string[] more)
    {
        var output = new StringWriter();
        var shell = Shells.Redirected(output, output) with { In = new StringReader(string.Concat(answers.Select(a => $"{a}\n"))) };
        var ended = await CommandLine.Run(["car", "new", Path, .. more], shell, TestContext.Current.CancellationToken);
        Assert.True(code == ended, output.ToString());
        return output.ToString();
    }
}
