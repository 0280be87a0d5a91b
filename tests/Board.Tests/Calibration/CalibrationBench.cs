using System.Globalization;
using Board.Tests.Pages;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Board.Tests.Calibration;

/// <summary>One step of a calibration procedure as the page told it.</summary>
/// <param name="Words">What to do.</param>
/// <param name="Spot">Where on the pad; empty where it does not matter.</param>
/// <param name="Told">What it waited for at first.</param>
/// <param name="WhenReady">What it said once the point could be read.</param>
/// <param name="CellShares">Part of the load on each cell, as the page told it; empty where no place was asked for.</param>
internal sealed record ProcedureStepSeen(string Words, string Spot, string Told, string WhenReady, string CellShares);

/// <summary>The car off the pads, and somebody who puts masses on one of them as the page says. Puts the car back at the end: the other tests want it there.</summary>
internal sealed class CalibrationBench(SharedBay bay, string corner) : IAsyncDisposable
{
    // The simulator's cells stand at the corners of the platform, in this order; see its geometry.
    private const int SpotMm = 140;
    private const double AnsweredWithin = 10;

    private static readonly Dictionary<string, (int X, int Y)> Spots = new()
    {
        ["over cell 1"] = (SpotMm, SpotMm), ["over cell 2"] = (SpotMm, -SpotMm), ["over cell 3"] = (-SpotMm, SpotMm), ["over cell 4"] = (-SpotMm, -SpotMm),
    };

    public BoardPage Board { get; private set; } = null!;

    /// <summary>Jacks the car up and opens the view on the pad.</summary>
    public async Task<BoardPage> Open()
    {
        bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        Board = await bay.Show(new PageSetup { Path = "calibration" });
        // By way of another pad: a form of its own, not what another test has typed.
        await Board.Page.Locator($"[name=pad][value={(corner == "LF" ? "RF" : "LF")}]").CheckAsync();
        await Board.Page.Locator($"[name=pad][value={corner}]").CheckAsync();
        await Board.Has("[data-do=start-procedure]");
        return Board;
    }

    /// <summary>Does every step that the page asks for, and gives what it said.</summary>
    /// <param name="wrongAt">The load at which a piece is not what it is marked with; 0: none is.</param>
    /// <param name="wrongKg">By how much.</param>
    public async Task<List<ProcedureStepSeen>> ReadAllPoints(double wrongAt = 0, double wrongKg = 0)
    {
        List<ProcedureStepSeen> seen = [];
        while (await Board.Page.Locator(".step").CountAsync() > 0)
        {
            var step = Board.Page.Locator(".step");
            var (number, load, spot) = (await step.GetAttributeAsync("data-step"), await step.GetAttributeAsync("data-load"), await step.GetAttributeAsync("data-spot") ?? "");
            var (words, told) = (await Board.Text(".step .do"), await Board.Text(".step .ready"));
            if (words.StartsWith("Move", StringComparison.Ordinal))
            {
                // Nobody slides a mass of 50 kg: it is lifted, and the pad is seen to move.
                Put(0, "");
                await Board.Has(".step[data-ready=no]");
            }

            var kg = double.Parse(load!, CultureInfo.InvariantCulture);
            Put(kg + (kg > 0 && kg == wrongAt ? wrongKg : 0), spot);
            await Board.Has("[data-do=record]:not([disabled])");
            var shares = spot.Length > 0 ? await Board.Text("[data-value=cell-shares]") : "";
            seen.Add(new ProcedureStepSeen(words, spot, told, await Board.Text(".step .ready"), shares));
            await Read(number!);
        }

        return seen;
    }

    // The noise of a moment can refuse a reading that the page had just offered, and a button that goes grey in the moment of the press takes none: asked
    // again as people do. A refusal can still stand there when the next reading was taken, so what is pressed is always the button of this step.
    private async Task Read(string step)
    {
        var next = $"document.querySelector('.step')?.dataset.step !== '{step}'";
        var button = $".step[data-step='{step}'] [data-do=record]:not([disabled])";
        for (var tries = 1; ; tries++)
        {
            await Board.Until($"{next} || document.querySelector(`{button}`)");
            if (await Board.Page.EvaluateAsync<bool>($"{next} || (document.querySelector(`{button}`)?.click(), false)"))
                return;
            if (tries == 5)
                break;
            try
            {
                await Board.Until($"{next} || document.querySelector('.refusal')", AnsweredWithin);
                await Task.Delay(500);
            }
            catch (TimeoutException)
            {
                // Pressed again.
            }
        }

        await Board.Until(next);
    }

    public ValueTask DisposeAsync()
    {
        Put(0, "");
        GiveUp();
        ZeroPadsResponse? zeros = null;
        Wait.Until(() => (zeros = bay.Rig.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "Ada" })).Results.All(r => r.Zero is not null), Wait.Patience, () => $"{zeros}");
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        bay.Rig.Settled();
        return ValueTask.CompletedTask;
    }

    /// <summary>Puts so much on the pad.</summary>
    public void Put(double kg, string spot)
    {
        var (x, y) = Spots.GetValueOrDefault(spot);
        bay.Rig.Simulator.Do(FormattableString.Invariant($$"""{"do":"mass","corner":"{{corner}}","kg":{{kg}},"x_mm":{{x}},"y_mm":{{y}},"at_once":true}"""));
    }

    // A test that failed half way leaves a calibration procedure behind, and a pad that is being calibrated takes no zero.
    private void GiveUp()
    {
        var (daemon, by) = (bay.Rig.Daemon, Enum.Parse<Corner>(corner, ignoreCase: true));
        var newest = daemon.CalibrationProcedures.ListProcedures(new ListProceduresRequest { SerialNumber = daemon.Pad(corner).SerialNumber }).CalibrationProcedures.FirstOrDefault()?.State;
        if (newest == ProcedureState.Measuring)
            daemon.CalibrationProcedureControl.AbandonProcedure(new AbandonProcedureRequest { Corner = by, Who = "Ada", Reason = "the test failed" });
        else if (newest == ProcedureState.Review)
            daemon.CalibrationProcedureControl.RejectCalibration(new RejectCalibrationRequest { Corner = by, Who = "Ada", Reason = "the test failed" });
    }
}
