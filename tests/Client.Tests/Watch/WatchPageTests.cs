using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Watch;
using Shared;

namespace Client.Tests.Watch;

/// <summary>Pictures that somebody has looked at and found right. Escape signs are written as ␛.</summary>
public class WatchPageTests
{
    private static readonly Diagnostic Away = new(Code.Read("SL-420"), "No daemon answers at http://127.0.0.1:5481.", "Start the daemon, or give its address with --daemon.");

    [Fact]
    public void Settled_and_high() => Approve("settled-high", Draw(Live(Readouts.Settled()), colour: false));

    [Fact]
    public void Settled_and_high_in_colour() => Approve("settled-high-colour", Draw(Live(Readouts.Settled()), colour: true));

    [Fact]
    public void Settled_on_target_wide() => Approve("on-target-wide", Draw(Live(Readouts.Settled(50.05)), colour: false, size: (120, 40)));

    [Fact]
    public void A_terminal_without_unicode() => Approve("settled-high-plain-signs", Draw(Live(Readouts.Settled()), colour: false, glyphs: Glyphs.Plain));

    [Fact]
    public void In_pounds_and_inches() => Approve("settled-high-pounds", Draw(Live(Readouts.Settled()), colour: false, glyphs: Pounds));

    [Fact]
    public void In_pounds_and_inches_wide() => Approve("on-target-wide-pounds", Draw(Live(Readouts.Settled(50.05)), colour: false, size: (120, 40), glyphs: Pounds));

    [Theory]
    [InlineData(60, "narrow-60-pounds")]
    [InlineData(40, "narrow-40-pounds")]
    public void Narrow_in_pounds(int width, string name) => Approve(name, Draw(Live(Readouts.Settled()), colour: false, size: (width, 24), glyphs: Pounds));

    [Theory]
    [InlineData(60, "narrow-60")]
    [InlineData(40, "narrow-40")]
    public void Narrow(int width, string name) => Approve(name, Draw(Live(Readouts.Settled()), colour: false, size: (width, 24)));

    [Theory]
    [InlineData(40)]
    [InlineData(60)]
    [InlineData(80)]
    public void Four_loads_the_verdict_and_the_pads_stand_whole_at_every_width(int width)
    {
        var heavy = Readouts.Settled();
        foreach (var corner in heavy.Corners)
            (corner.LoadKg.Estimate, corner.Calibrated) = (1111.1, true);
        foreach (var glyphs in (Glyphs[])[Glyphs.Rich, Pounds, Glyphs.Plain])
        {
            var text = string.Join('\n', WatchPage.Draw(Live(heavy), (width, 24), glyphs).ToPlainLines());
            Assert.Contains("SETTLED, fit for the record", text);
            Assert.Contains("HIGH by 2.14 %", text);
            Assert.Contains("(RF + LR) / total", text);
            foreach (var corner in (string[])["LF", "RF", "LR", "RR"])
            {
                Assert.Matches(glyphs == Pounds ? $@"{corner} 2449\.6( ± 0\.7)?( lb| )" : $@"{corner} 1111\.1( (±|\+-) 0\.3)?( kg| )", text);
                Assert.Contains(width == 40 ? "4 live" : $"{corner} live", text);
            }
        }
    }

    [Fact]
    public void On_a_narrow_terminal_the_pads_that_are_not_well_are_named()
    {
        var pads = Readouts.Pads();
        pads.Pads[2] = new Pad { Corner = Corner.Lr, State = PadState.Absent, Faults = { new ScaleLink.Api.V1.Diagnostic { Code = "SL-101", Message = "There is no port.", Remedy = "Plug it in." } } };
        var text = string.Join('\n', Draw(Live(Readouts.Without(Verdict.Raised, "Up.")) with { Pads = Readouts.Live(pads) }, colour: false, size: (40, 24)));
        Assert.Contains("SL-101", text);
        Assert.Contains("3 live", text);
        Assert.Contains("Nobody under a car on a jack", text);
    }

    [Fact]
    public void A_remark_with_a_load_in_it_is_in_pounds_too()
    {
        var loads = Readouts.Without(Verdict.Incomplete, "RF reads 10 kg.");
        loads.TypedRemark = new() { Pattern = "RF reads {0}.", Arguments = { new Argument { Value = 10, Kind = ArgumentKind.Mass, Decimals = 1 } } };
        Assert.Contains("RF reads 22.0 lb.", string.Join('\n', Draw(Live(loads), colour: false, glyphs: Pounds)));
    }

    [Fact]
    public void Moving() => Approve("moving", Draw(Live(Readouts.Moving()), colour: false));

    [Fact]
    public void Held() => Approve("held", Draw(Scene(Readouts.Held(Readouts.Settled(), 12, Away)), colour: true));

    [Fact]
    public void Absent() => Approve("absent", Draw(Scene(Readouts.Absent<Loads>(Away)), colour: false));

    [Fact]
    public void Raised() => Approve("raised", Draw(Live(Readouts.Without(Verdict.Raised, "The pads are empty.")), colour: false));

    [Fact]
    public void A_pad_that_has_gone_says_how_to_fix_it()
    {
        var pads = Readouts.Pads();
        pads.Pads[2] = new Pad
        {
            Corner = Corner.Lr, State = PadState.Absent,
            Faults = { new ScaleLink.Api.V1.Diagnostic { Code = "SL-101", Message = "There is no port /dev/ttyUSB2.", Remedy = "Plug the adapter in; look at its cable." } },
        };
        var scene = Live(Readouts.Without(Verdict.Incomplete, "LR: There is no port /dev/ttyUSB2. (SL-101)")) with { Pads = Readouts.Live(pads) };
        Approve("pad-gone", Draw(scene, colour: false));
    }

    [Fact]
    public void The_crews_action_and_its_prediction_are_drawn_before_the_turn()
    {
        var scene = Live(Readouts.Moving()) with { Action = "LF, RR up ¾ turn, RF, LR down ¾: then settle" };
        scene.Trace.Add(Readouts.Live(Readouts.Settled(52.1)));
        scene.Trace.Announce("LF RR +¼, RF LR -¼", null);
        scene.Trace.HandsOff();
        scene.Trace.Add(Readouts.Live(Readouts.Settled(51.5)));
        scene.Trace.Announce("LF RR +¾, RF LR -⅞", 50.0);
        Approve("prediction", Draw(scene, colour: false));
    }

    [Fact]
    public void A_held_picture_has_no_verdict_no_aim_and_no_solid_number()
    {
        var picture = string.Join('\n', Draw(Scene(Readouts.Held(Readouts.Settled(), 12)), colour: false));
        Assert.Contains("HELD: 12 s old", picture);
        Assert.DoesNotContain("SETTLED", picture);
        Assert.DoesNotContain("HIGH", picture);
        Assert.DoesNotContain("LIVE", picture);
        Assert.DoesNotContain('█', picture);
    }

    [Fact]
    public void Hostile_text_of_a_daemon_cannot_reach_the_terminal()
    {
        var loads = Readouts.Without(Verdict.Incomplete, "\e]0;owned\a [red]markup[/]");
        loads.Bay = "\e[2J";
        var picture = string.Join('\n', WatchPage.Draw(Live(loads), (80, 24), Glyphs.Rich).ToLines(false)).Replace("\e[0m", "").Replace("\e[1m", "").Replace("\e[2m", "");
        Assert.DoesNotContain('\e', picture);
        Assert.DoesNotContain('\a', picture);
        Assert.Contains("[red]markup[/]", picture);
    }

    [Theory]
    [InlineData(20, 5)]
    [InlineData(1, 1)]
    [InlineData(80, 10)]
    [InlineData(300, 90)]
    public void Any_size_is_drawn_within_its_bounds(int width, int height)
    {
        var lines = Draw(Live(Readouts.Settled()), colour: false, size: (width, height));
        Assert.Equal(height, lines.Length);
        Assert.All(lines, line => Assert.True(line.Replace("␛[1m", "").Replace("␛[2m", "").Replace("␛[0m", "").Length <= width));
    }

    private static Glyphs Pounds => Glyphs.Rich with { Units = ScaleLink.Measure.Units.PoundInch };

    private static WatchScene Live(Loads loads) => Scene(Readouts.Live(loads)) with { Pads = Readouts.Live(Readouts.Pads()) };

    private static WatchScene Scene(Judged<Loads> view)
    {
        var trace = new StepTrace();
        trace.Add(view);
        return new WatchScene { Loads = view, Trace = trace, Steady = new(TimeProvider.System), Foot = "http://127.0.0.1:5481   Ctrl-C ends" };
    }

    private static string[] Draw(WatchScene scene, bool colour, (int, int)? size = null, Glyphs? glyphs = null) =>
        [.. WatchPage.Draw(scene, size ?? (80, 24), glyphs ?? Glyphs.Rich).ToLines(colour).Select(l => l.Replace('\e', '␛'))];

    private static void Approve(string name, string[] lines) => Approved.Matches(string.Join('\n', lines), "tests", "Client.Tests", "Watch", $"{name}.approved.txt");
}
