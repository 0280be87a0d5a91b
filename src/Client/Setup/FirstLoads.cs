using ScaleLink.Api.V1;
using ScaleLink.Client.Calibration;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Watch;

namespace ScaleLink.Client.Setup;

/// <summary>From a bay file to loads: the pads are live, zeroed and calibrated.</summary>
internal sealed class FirstLoads(DaemonConnection daemon, Dialog dialog, Shell shell, string who)
{
    private const int MostTries = 10;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60), AskAgain = TimeSpan.FromMilliseconds(500);

    /// <summary>Runs until somebody leaves the live loads; gives the exit code.</summary>
    /// <param name="bayFile">The bay file of a daemon that ends with this program; nothing: the daemon stays.</param>
    /// <param name="stop">Ends it.</param>
    public async Task<int> Run(string? bayFile, CancellationToken stop)
    {
        await Live(stop);
        foreach (var pad in (await Pads(stop)).Where(p => !p.Calibrated))
            await Calibrate(pad, stop);
        await Zero(stop);
        await new FirstCar(daemon, dialog, shell, who).Run(stop);
        shell.WriteLine("The next start:");
        shell.WriteLine($"  scalelinkd --bay {bayFile ?? "FILE"}");
        if (shell.CanRedraw)
            await new WatchScreen(shell, daemon).Run(10, stop);
        else
            await LoadsWriting.Plain(daemon, shell, 1, stop);
        return ExitCodes.Done;
    }

    private async Task<IReadOnlyList<Pad>> Pads(CancellationToken stop) => (await daemon.Ask(o => daemon.Pads.ListPadsAsync(new ListPadsRequest(), o), stop)).Pads;

    private async Task Live(CancellationToken stop)
    {
        shell.WriteLine("The bay begins.");
        for (var started = shell.Time.GetTimestamp(); ;)
        {
            try
            {
                if ((await Pads(stop)) is { Count: > 0 } pads && (pads.All(p => p.State == PadState.Live) || shell.Time.GetElapsedTime(started) > Patience))
                {
                    foreach (var pad in pads)
                        shell.WriteLine($"  {pad.Corner.Name()} {Words.State(pad.State)}  {PeerText.Clean(pad.SerialNumber, 60)}");
                    return;
                }
            }
            catch (ClientException) when (shell.Time.GetElapsedTime(started) < Patience)
            {
                // It is still on its way from the one to the other.
            }

            await Task.Delay(AskAgain, shell.Time, stop);
        }
    }

    private async Task Calibrate(Pad pad, CancellationToken stop)
    {
        while (true)
        {
            var said = await dialog.Ask($"{pad.Corner.Name()} is not calibrated. Masses at hand, {shell.Glyphs.MassSign()} or with another unit, such as \"8 x 50 kg, M1\" or \"4 x 45 lb, within 0.5\" with ; between (Enter: later):", stop);
            if (said.Length == 0)
                return;
            try
            {
                var work = new ProcedureCalls(daemon, pad.Corner, who);
                var request = new StartProcedureRequest { WayDown = true };
                request.Masses.AddRange(MassFile.Parse(MassText.Lines(said, shell.Glyphs.MassSign())));
                var view = await work.Start(request, stop);
                var code = shell.CanRedraw
                    ? await new ProcedureScreen(shell, daemon, work, "").Run(view, stop)
                    : await new ProcedureLines(shell, daemon, work, new ProcedureTelling(shell, json: false), dialog.Lines).Run(new ProcedureDecision(Adopt: true, null, ""), stop);
                if (code == ExitCodes.Done)
                    return;
            }
            catch (ClientException e)
            {
                shell.WriteLine(shell.Glyphs.Tell(e.Diagnostic));
            }
        }
    }

    private async Task Zero(CancellationToken stop)
    {
        shell.WriteLine(Cautions.Zero);
        while (await dialog.Ask("Enter takes the zero of all pads; s leaves it.", stop) != "s")
        {
            var refused = await TakeZero(stop);
            foreach (var result in refused)
                shell.WriteLine($"  {result.Corner.Name()} refused: {shell.Glyphs.Tell(DiagnosticReader.Read(result.Refused))}");
            // A pad that gives no load yet has nothing to be zeroed: its first calibration procedure begins with it empty.
            if (refused.All(GivesNoLoad))
                return;
        }
    }

    // The noise of a moment refuses a pad; asked again as people do.
    private async Task<IReadOnlyList<ZeroResult>> TakeZero(CancellationToken stop)
    {
        for (var tries = 1; ; tries++)
        {
            var answer = await daemon.Ask(o => daemon.PadControl.ZeroPadsAsync(new ZeroPadsRequest { Who = who }, o), stop);
            IReadOnlyList<ZeroResult> refused = [.. answer.Results.Where(r => r.Zero is null)];
            if (refused.All(GivesNoLoad) || tries == MostTries)
                return refused;
            await Task.Delay(AskAgain, shell.Time, stop);
        }
    }

    private static bool GivesNoLoad(ZeroResult refused) => refused.Refused.Code == PadStateCodes.NoSensitivity;
}
