using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests.InclinometerZeros;

/// <summary>The zero of a pad's inclinometer found by clicks on the patch view, the pad turned as the page says.</summary>
[Collection(CalibrationBayTests.Name)]
public sealed class InclinometerZeroTests(SharedBay bay) : IAsyncDisposable
{
    private const double ZeroPitch = 0.5;
    private bool _isTurned;

    [Fact]
    public async Task A_pad_is_read_turned_and_read_until_its_zero_is_in_effect_and_can_be_forgotten()
    {
        bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        bay.Rig.Simulator.Do(FormattableString.Invariant($$"""{"do":"tilt-zero","corner":"LR","pitch_deg":{{ZeroPitch}},"roll_deg":0}"""));
        bay.Rig.Simulator.Do("""{"do":"pad-tilt","corner":"LR","pitch_deg":0.8,"roll_deg":0}""");
        var board = await bay.Show(new PageSetup { Path = "device" });
        await board.Go("patch");
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[name=tilt-pad][value=LR]").CheckAsync();
        await board.Has("[data-tilt-pad=LR][data-tested=no]");
        Assert.Contains("never tested", await board.Text("[data-value=inclinometer-zero]"));
        Assert.Contains("put the pad down empty", await board.Text("[data-value=tilt-step]"));
        await Read(board, 1);

        // Not turned, or level ground: the page asks, and nobody says so here.
        await board.Page.Locator("[data-do=read-tilt]:not([disabled])").ClickAsync();
        await board.Has("[data-do=said-turned]");
        Assert.Contains("SL-549", await board.Text(".inclinometer-zero .refusal"));
        await Look.AtAllSizes(board, "patch-inclinometer-zero");
        await Look.AxeFindsNothing(board);

        Turn();
        await Read(board, 2);
        Assert.Contains("turn it back", await board.Text("[data-value=tilt-step]"));
        Turn();
        // The hand on the keyboard is still on the button that reads.
        await board.Until("document.activeElement?.dataset.do === 'read-tilt'");
        await board.Page.Keyboard.PressAsync("Enter");
        await board.Has("[data-next='4']");
        Turn();
        await board.Page.Locator("[data-do=read-tilt]:not([disabled])").ClickAsync();
        await board.Has("[data-tilt-pad=LR][data-tested=yes]");

        var zero = Of(bay).Zero;
        Assert.Equal(ZeroPitch, zero.PitchDeg.Estimate, 0.06);
        Assert.Equal("Ada", zero.Who);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"zero pitch {zero.PitchDeg.Estimate:+0.00;\u22120.00}\u00b0 \u00b1"), await board.Text("[data-value=inclinometer-zero]"));
        // The bubble goes by the corrected tilt: of the other sign, the pad lies turned.
        await board.Until("document.querySelector('[data-bubble=LR]')?.innerText.includes('front high')");
        await board.Page.Locator("[data-do=clear-tilt]:not([disabled])").ClickAsync();
        await board.Has("[data-tilt-pad=LR][data-tested=no]");
        Assert.Null(Of(bay).Zero);
        Assert.Empty(board.Errors);
    }

    /// <summary>As the other tests want the bay: the pads level and the right way round, the car settled on them.</summary>
    public ValueTask DisposeAsync()
    {
        if (_isTurned)
            Turn();
        bay.Rig.Simulator.Do("""{"do":"tilt-zero","corner":"LR","pitch_deg":0,"roll_deg":0}""");
        bay.Rig.Simulator.Do("""{"do":"pad-tilt","corner":"LR","pitch_deg":0,"roll_deg":0}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        bay.Rig.Settled();
        return ValueTask.CompletedTask;
    }

    private static PadInclinometerZero Of(SharedBay bay) =>
        new ScaleLink.Api.V1.InclinometerZeros.InclinometerZerosClient(bay.Rig.Daemon.Channel).ListInclinometerZeros(new ListInclinometerZerosRequest()).Pads.Single(p => p.Corner == Corner.Lr);

    private void Turn()
    {
        _isTurned = !_isTurned;
        bay.Rig.Simulator.DoAndWait("""{"do":"turn-pad","corner":"LR"}""");
    }

    private static async Task Read(BoardPage board, int number)
    {
        await board.Page.Locator("[data-do=read-tilt]:not([disabled])").ClickAsync();
        await board.Has($"[data-next='{number + 1}']");
    }
}
