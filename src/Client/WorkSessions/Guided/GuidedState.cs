using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Measure;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>What the guided session shows at an instant.</summary>
/// <param name="Session">The session as judged now.</param>
/// <param name="Loads">The loads as judged now; absent before the first.</param>
/// <param name="IsWaiting">A weighing waits for the car to settle.</param>
/// <param name="Message">What came of the last key; may be empty.</param>
/// <param name="Question">What is being typed; nothing while nothing is.</param>
internal sealed record GuidedState(Judged<GetSessionResponse> Session, Judged<Loads>? Loads, bool IsWaiting, string Message, string? Question)
{
    /// <summary>The session in the bay; absent when none is open or known.</summary>
    public Session? Open => Session.Message?.Session;

    /// <summary>The loads as the session judges them; absent when they are not live.</summary>
    public Loads? Live => Loads is { Freshness: Measure.Age.Freshness.Live, Message: { } loads } ? Open?.Seen(loads) ?? loads : null;

    /// <summary>Who works here.</summary>
    public required string Who { get; init; }

    /// <summary>In which loads, lengths and pressures are asked for.</summary>
    public Units Units { get; init; } = Units.Metric;

    /// <summary>Somebody wants to read the cautions once more.</summary>
    public bool TellsCautions { get; init; }

    /// <summary>Who works here has not read yet what can hurt.</summary>
    public bool IsUnread => Open is { Ending.Length: 0 } session && !session.HasRead(Who);

    /// <summary>What keys do now; nothing while the session is not live.</summary>
    public IReadOnlyList<Offer> Keys => Session.Freshness != Measure.Age.Freshness.Live ? [] : IsUnread ? Offers.Unread : Offers.For(Open, IsWaiting, Units);
}
