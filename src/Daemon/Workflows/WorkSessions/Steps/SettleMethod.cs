using System.Text.Json.Serialization;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Steps;

/// <summary>How the car is settled, and how well cross weight repeats when it is.</summary>
/// <param name="Actions">In order.</param>
/// <param name="RepeatabilityPercent">One standard deviation of cross weight between settles, percent.</param>
/// <param name="DegreesOfFreedom">What the repeatability rests on.</param>
/// <param name="FromSettles">Settles of earlier sessions that it is pooled from.</param>
internal sealed record SettleMethod(IReadOnlyList<string> Actions, [property: JsonPropertyName("scatterPercent")] double RepeatabilityPercent, double DegreesOfFreedom, int FromSettles)
{
    /// <summary>Common practice, no published source.</summary>
    public static IReadOnlyList<string> RollAndBounce { get; } =
        ["roll the car forward and back by a wheel turn", "bounce each end three times", "hands off, nobody near the pads"];
}
