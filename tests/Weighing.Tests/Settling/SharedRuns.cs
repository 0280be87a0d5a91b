using Weighing.Tests.Settling.Scenarios;

namespace Weighing.Tests.Settling;

/// <summary>The same runs serve every question asked of a scenario.</summary>
static class SharedRuns
{
    public const int Trials = 50;

    static readonly Lazy<SettlingTrial[]> Linear = Of(Scenario.Linear, 9001);
    static readonly Lazy<SettlingTrial[]> Workshop = Of(Scenario.Workshop, 9002);
    static readonly Lazy<SettlingTrial[]> Friction = Of(Scenario.Friction, 9003);

    public static SettlingTrial[] In(string scenario) => scenario switch
    {
        "linear" => Linear.Value,
        "workshop" => Workshop.Value,
        "friction" => Friction.Value,
        _ => throw new ArgumentOutOfRangeException(nameof(scenario), scenario, "There is no such scenario."),
    };

    static Lazy<SettlingTrial[]> Of(Scenario scenario, int seed) =>
        new(() => scenario.Each(seed, Trials, record => new SettlingTrial(record)));
}
