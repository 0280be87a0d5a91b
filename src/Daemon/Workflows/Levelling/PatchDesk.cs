using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Levelling.Files;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>The height measurement in effect and the corrections that the crew has switched on; both live in the ledger.</summary>
internal sealed class PatchDesk
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true, Converters = { new JsonStringEnumConverter() } };
    private static readonly EntryKind<Kept> HeightMeasurementKind = new("patch-survey", Json);
    private static readonly EntryKind<List<CorrectionKind>> SwitchKind = new("patch-corrections", Json);

    private static readonly FoldedKind<PatchState, Kept> HeightMeasurements = new(HeightMeasurementKind, (state, entry) => state with { HeightMeasurement = HeightMeasurement(entry) }, isWhole: true);
    private static readonly FoldedKind<PatchState, List<CorrectionKind>> Switches = new(SwitchKind, (state, entry) => state with { On = entry.Body }, isWhole: true);

    private readonly TimeProvider _time;
    private readonly string _bay;
    private readonly Workflow<PatchState> _flow;

    /// <summary>Takes up what the ledger says.</summary>
    public PatchDesk(LedgerDatabase ledger, BayConfiguration bay, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(bay);
        (_time, _bay) = (time, bay.Bay);
        _flow = new(ledger, new(null, []), _bay, HeightMeasurements, Switches);
    }

    /// <summary>As it stands now.</summary>
    public PatchState State => _flow.State;

    /// <summary>Puts a height measurement into effect.</summary>
    /// <exception cref="DiagnosticException">It is incomplete, or contradicts itself.</exception>
    public void Save(HeightMeasurementInput input, string who)
    {
        ArgumentNullException.ThrowIfNull(input);
        _flow.Take(_bay, _ => HeightMeasurements.Entry(_time.GetUtcNow(), who, new Kept(input)));
    }

    /// <summary>Forgets the height measurement: the pads were moved.</summary>
    public void Clear(string who) => _flow.Take(_bay, _ => HeightMeasurements.Entry(_time.GetUtcNow(), who, new Kept(null)));

    /// <summary>Switches a correction on or off.</summary>
    public void Set(CorrectionKind kind, bool isOn, string who) => _flow.Take(_bay, state =>
    {
        var on = isOn ? state.On.Append(kind).Distinct() : state.On.Where(k => k != kind);
        return Switches.Entry(_time.GetUtcNow(), who, [.. on.Order()]);
    });

    private static SavedHeightMeasurement? HeightMeasurement(JournalEntry<Kept> entry) => entry.Body.HeightMeasurement is { } input
        ? new(input, input.Adjust(), entry.At, entry.Who)
        : null;

    private sealed record Kept([property: JsonPropertyName("survey")] HeightMeasurementInput? HeightMeasurement);
}
