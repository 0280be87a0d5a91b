using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Steps;

/// <summary>A correction of the patch that was switched on when a reading was taken.</summary>
/// <param name="Name">"slope" or "warp".</param>
/// <param name="SizeKg">What it added to each load, kg. Null: it was refused, and the loads are without it.</param>
internal sealed record PatchInReading(string Name, Corners? SizeKg)
{
    /// <summary>Its size at the wheel that it changes most, or that it was refused.</summary>
    public string Words => SizeKg is { } kg ? FormattableString.Invariant($"{Name} {Corners.All.ToArray().Max(c => Math.Abs(kg[c])):0.0} kg") : $"{Name} refused";

    /// <summary>Those of a reading of all four loads.</summary>
    public static IReadOnlyList<PatchInReading> Of(BayReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return [.. PatchState.Kinds.Select(k => Of(reading, k)).OfType<PatchInReading>()];
    }

    private static PatchInReading? Of(BayReading reading, CorrectionKind kind)
    {
        var name = CorrectedReading.NameOf(kind);
        List<Correction> each = [.. reading.Corners.SelectMany(c => c.Corrections).Where(c => c.Name == name)];
        if (each.Count == 0)
            return null;
        return new(name, each.Count == reading.Corners.Count && each.All(c => c.SizeKg is not null) ? Corners.From(c => each[(int)c].SizeKg!.Value) : null);
    }
}
