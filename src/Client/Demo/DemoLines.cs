using ScaleLink.Api.V1;
using ScaleLink.Client.Json;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Demo;

/// <summary>The demo as lines, for scripts.</summary>
internal sealed class DemoLines(Shell shell, bool json) : ICrewBoard
{
    private readonly long _started = shell.Time.GetTimestamp();

    private double Seconds => Math.Round(shell.Time.GetElapsedTime(_started).TotalSeconds, 2);

    /// <summary>Runs the story. Exit code 0 only when cross weight came on target in time.</summary>
    public async Task<int> Run(DemoSetup setup, bool stay, CancellationToken stop)
    {
        CrewResult? result = null;
        try
        {
            Say("Starting the simulated car on pads and the daemon");
            await using var bay = await DemoBay.Start(setup, shell.Time, stop);
            Say($"In {bay.Folder}: {DemoPlaces.Of(bay)}");
            var story = new Crew(bay, this, shell.Glyphs, shell.Time).WorkSessions(stop);
            await bay.Accompany(story, stop);
            result = await story;
            Finish(result);
            if (stay)
                await bay.Guard(stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            if (result is null)
                shell.Error.WriteLine($"scalelink: {new Diagnostic(DemoCodes.TimeOver, $"The crew was not done after {Seconds:0} s.", "Give it longer with --seconds.")}");
        }

        return result is { IsOnTarget: true } ? ExitCodes.Done : ExitCodes.NotAchieved;
    }

    public void Say(string doing) => Write(doing, new DemoJson { AtS = Seconds, Doing = doing });

    public void Announce(string label, double? predictedPercent)
    {
        if (predictedPercent is { } percent)
            Say($"Expected: cross weight about {percent:0.0} %");
    }

    public void HandsOff()
    {
        // The crew says it in words.
    }

    public void Read(Loads reading) => Write(
        new PlainLine(shell.Glyphs).Of(reading),
        new DemoJson { AtS = Seconds, CrossWeightPercent = ValueJson.Of(reading.CrossWeightPercent), Aim = Words.Name(reading.Aim) });

    private void Finish(CrewResult result) => Write(
        DemoPlaces.Ending(result, shell.Glyphs),
        new DemoJson { AtS = Seconds, Converged = result.IsOnTarget, Adjustments = result.Adjustments, CrossWeightPercent = ValueJson.Of(result.Reading.CrossWeightPercent) });

    private void Write(string line, DemoJson record)
    {
        if (json)
            shell.WriteJson(record, ClientJson.Default.DemoJson);
        else
            shell.WriteDated($"{Seconds,5:0.0} s  {line}");
    }
}
