using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Weighing.Questions;

/// <summary>What statics says to the questions; parts that were not asked are null or empty.</summary>
sealed record WhatIfAnswers
{
    /// <summary>The loads as given.</summary>
    public required LoadSummary Now { get; init; }

    /// <summary>Where the mass is.</summary>
    public required CentreOfGravity CentreOfGravity { get; init; }

    /// <summary>Change of load (row, kg) for one turn of a perch (column).</summary>
    public required CornerMatrix LoadsPerTurn { get; init; }

    /// <summary>What each aim of the perches costs the others.</summary>
    public required IReadOnlyList<BalanceTrade> Trades { get; init; }

    /// <summary>Loads after the change asked about, and ride heights by its turns, mm.</summary>
    public (LoadSummary Loads, Corners HeightChangesMm)? Then { get; init; }

    /// <summary>What to turn.</summary>
    public PerchPlan? Plan { get; init; }

    /// <summary>Ballast was asked about, and the car file names no place for any.</summary>
    public bool LacksPlaces { get; init; }

    /// <summary>Ways to the front weight asked for.</summary>
    public IReadOnlyList<BallastMove> ForFrontWeight { get; init; } = [];

    /// <summary>Ways to the left-side weight asked for.</summary>
    public IReadOnlyList<BallastMove> ForLeftSideWeight { get; init; } = [];

    /// <summary>Start and finish with each driver that the car file names.</summary>
    public IReadOnlyList<RaceCase> Cases { get; init; } = [];

    /// <summary>Against the least mass of the class: the one asked about, else the one in the car file.</summary>
    public ClassMinimum? Class { get; init; }

    /// <summary>From the axle lifts.</summary>
    public CgHeight? CgHeight { get; init; }

    /// <summary>Values that nobody knows and that the answers lean on.</summary>
    public IReadOnlyList<string> Guesses { get; init; } = [];

    /// <summary>How far the loads after the change move with each guess; empty where none shows.</summary>
    public IReadOnlyList<GuessLean> LeansOn { get; init; } = [];

    /// <summary>Answers everything that was asked.</summary>
    /// <exception cref="DiagnosticException">A question cannot be answered: no perch turns, lifts contradict each other.</exception>
    public static WhatIfAnswers Of(WhatIfQuestions asked)
    {
        var (car, loads) = (asked.Car, asked.Loads);
        var statics = new CarStatics(car, loads.Loads.Sum);
        return new()
        {
            Now = loads,
            CentreOfGravity = CentreOfGravity.From(loads, car),
            LoadsPerTurn = statics.LoadsPerTurn,
            Trades = BalanceTrade.All(loads.Loads, statics.Contacts, car.Targets.CrossWeightPercent),
            Then = asked.Change?.Ask(statics, loads),
            Plan = asked.PlanWithRepeatabilityPercent is { } repeatability
                ? PerchPlanner.Plan(new(StepLearner.Start(statics, loads, repeatability), asked.RideHeightsMm))
                : null,
            LacksPlaces = (asked.FrontWeightPercent ?? asked.LeftSideWeightPercent) is not null && car.BallastStations.Count == 0,
            ForFrontWeight = asked.FrontWeightPercent is { } front ? BallastMove.Ways(statics, loads.Loads, BallastGoal.FrontWeight, front) : [],
            ForLeftSideWeight = asked.LeftSideWeightPercent is { } left ? BallastMove.Ways(statics, loads.Loads, BallastGoal.LeftSideWeight, left) : [],
            Cases = RaceCases.Of(statics, loads, car.Targets.CrossWeightPercent),
            Class = asked.Class is { } c ? ClassMinimum.Of(statics, loads, c.MinimumKg, c.MarginKg, c.Cases) : ClassMinimum.Of(statics, loads),
            CgHeight = asked.Lifts is { } lifts ? CgHeight.From(lifts.Setup, lifts.Lifts) : null,
            Guesses = car.Guesses(),
            LeansOn = asked.Change is { } change ? GuessLean.Of(change, statics, loads) : [],
        };
    }
}
