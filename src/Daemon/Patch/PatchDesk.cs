using System.Text.Json;
using System.Text.Json.Serialization;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Patch;
using ScaleLink.Weighing.Patch.Files;

namespace ScaleLink.Daemon.Patch;

/// <summary>The survey in force and the corrections that the crew has switched on; both live in the ledger.</summary>
public sealed class PatchDesk
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { IgnoreReadOnlyProperties = true, Converters = { new JsonStringEnumConverter() } };
    private static readonly EntryKind<Kept> SurveyKind = new("patch-survey", Json);
    private static readonly EntryKind<List<CorrectionKind>> SwitchKind = new("patch-corrections", Json);

    private readonly LedgerDatabase _ledger;
    private readonly TimeProvider _time;
    private readonly string _bay;
    private readonly Lock _gate = new();
    private volatile PatchState _state;

    /// <summary>Takes up what the ledger says.</summary>
    public PatchDesk(LedgerDatabase ledger, BayConfiguration bay, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(bay);
        (_ledger, _time, _bay) = (ledger, time, bay.Bay);
        _state = new(Survey(SurveyKind.Newest(ledger, _bay)), SwitchKind.Newest(ledger, _bay)?.Body ?? []);
    }

    /// <summary>As it stands now.</summary>
    public PatchState State => _state;

    /// <summary>Puts a survey into force.</summary>
    /// <exception cref="DiagnosticException">It is incomplete, or contradicts itself.</exception>
    public void Save(SurveyInput input, string who)
    {
        ArgumentNullException.ThrowIfNull(input);
        var survey = input.Adjust();
        lock (_gate)
        {
            var entry = SurveyKind.Append(_ledger, _time.GetUtcNow(), _bay, who, new Kept(input));
            _state = _state with { Survey = new(input, survey, entry.At, who) };
        }
    }

    /// <summary>Forgets the survey: the pads were moved.</summary>
    public void Clear(string who)
    {
        lock (_gate)
        {
            SurveyKind.Append(_ledger, _time.GetUtcNow(), _bay, who, new Kept(null));
            _state = _state with { Survey = null };
        }
    }

    /// <summary>Switches a correction on or off.</summary>
    public void Set(CorrectionKind kind, bool isOn, string who)
    {
        lock (_gate)
        {
            var on = isOn ? _state.On.Append(kind).Distinct() : _state.On.Where(k => k != kind);
            List<CorrectionKind> kept = [.. on.Order()];
            SwitchKind.Append(_ledger, _time.GetUtcNow(), _bay, who, kept);
            _state = _state with { On = kept };
        }
    }

    private static SavedSurvey? Survey(JournalEntry<Kept>? entry) => entry?.Body.Survey is { } input
        ? new(input, input.Adjust(), entry.At, entry.Who)
        : null;

    private sealed record Kept(SurveyInput? Survey);
}
