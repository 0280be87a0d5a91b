using ScaleLink.Daemon.Links;
using ScaleLink.Measure.Sentences;

namespace Daemon.Tests.Links;

/// <summary>Keeps what a conversation tells of one source.</summary>
internal sealed class HeardSource : IPadSource
{
    public string Name => "heard";

    public bool IsUnknown { get; set; }

    public List<RawSample> Samples { get; } = [];

    public List<PadIdentity> Identities { get; } = [];

    /// <summary>Codes in effect.</summary>
    public Dictionary<string, string> Troubles { get; } = [];

    /// <summary>Every code ever told, in order.</summary>
    public List<string> Told { get; } = [];

    public Func<ProtocolCounters> Counters { get; private set; } = () => default;

    public void LinkOpened(Func<ProtocolCounters> counters) => Counters = counters;

    public void LinkFailed(Diagnostic fault) => Told.Add(fault.Code);

    public void Received(int bytes)
    {
    }

    public void OnIdentity(PadIdentity identity) => Identities.Add(identity);

    public void OnSample(in RawSample sample) => Samples.Add(sample);

    public void OnRefusal(Code code, Sentence message, Sentence remedy) => Told.Add(code);

    public void OnTrouble(Code code, Sentence message, Sentence remedy, bool stops)
    {
        Assert.NotEmpty(remedy.ToString());
        Troubles[code] = message;
        Told.Add(code);
    }

    public void OnTroubleOver(Code code) => Troubles.Remove(code);
}
