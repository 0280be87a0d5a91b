using ScaleLink.Probing.Loading;

namespace ScaleLink.Daemon.Setup;

/// <summary>What follows when somebody has stepped on a pad and off again.</summary>
internal static class SteppedOff
{
    // Who goes straight from one pad to the next is seen on both for as long as a load takes to be judged.
    private static readonly TimeSpan Passing = TimeSpan.FromSeconds(2.5);

    public static SetupProgress Apply(SetupProgress progress, string id, TimeSpan at, IReadOnlyList<NumberPlace> cells)
    {
        var device = progress.Devices.First(d => d.Id == id);
        progress = progress.With(id, d => d with { Cells = cells, IsSpoilt = false });
        if (progress.Awaiting is not { } corner || device.IsSpoilt)
            return progress;
        if (progress.Devices.Any(d => d.Id != id && at - d.LoadedSince > Passing))
        {
            progress = progress with { Devices = [.. progress.Devices.Select(d => d with { IsSpoilt = d.Id != id && d.LoadedSince is not null })] };
            return progress with { Note = new Diagnostic(SetupCodes.TwoLoaded, $"{SetupCodes.TwoLoaded.Meaning}.", $"Step on the {corner} pad alone, and off again.") };
        }

        if (device.Corner is { } other && other != corner)
            return progress with { Note = new Diagnostic(SetupCodes.OtherCorner, $"That pad stands under {other}.", $"Step on the {corner} pad, or take {other} from it first.") };
        return progress.Placed(id, corner).Next();
    }
}
