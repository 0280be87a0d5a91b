using ScaleLink.Weighing.Calibration.Results;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>How long a plan is.</summary>
enum PlanLength
{
    /// <summary>As somebody has stated it.</summary>
    Stated,
    /// <summary>Few loads once up and down: enough where masses and the pad's usual errors say most.</summary>
    Short,
    /// <summary>Five loads, three repetitions and three preloads, as OIML R 60-2:2021, 2.10.1, asks for a load cell.</summary>
    Full,
}

/// <summary>Chooses between the short and the full plan.</summary>
/// <param name="Length">Chosen.</param>
/// <param name="Plan">Chosen.</param>
/// <param name="Forecast">Of it.</param>
/// <param name="Other">Of the plan that was not chosen; null where there was no choice.</param>
sealed record PlanChoice(PlanLength Length, ProcedurePlan Plan, PlanForecast Forecast, PlanForecast? Other)
{
    /// <summary>Loads of the short plan.</summary>
    public const int ShortLoads = 3;

    /// <summary>The shorter one of two good plans, when it reaches what is asked; where nobody asks, what a class III scale may err by in service.</summary>
    public static PlanChoice Between(ProcedurePlan brief, ProcedurePlan full)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(full);
        var (ofBrief, ofFull) = (PlanForecast.Of(brief), PlanForecast.Of(full));
        var isEnough = brief.Asked is { } asked
            ? ForeseenCalibration.Of(brief).Budget(asked.AtKg).Expanded(asked.Coverage) <= asked.ExpandedKg
            : ofBrief.AtHighestKg <= ErrorLimits.InServiceKg(AccuracyClass.III, ofBrief.HighestKg, ClassGrade.UsualIntervalKg);
        return isEnough ? new PlanChoice(PlanLength.Short, brief, ofBrief, ofFull) : new PlanChoice(PlanLength.Full, full, ofFull, ofBrief);
    }

    /// <summary>The one plan that was stated.</summary>
    public static PlanChoice Only(PlanLength length, ProcedurePlan plan, ProcedurePlan? other = null) =>
        new(length, plan, PlanForecast.Of(plan), other is null ? null : PlanForecast.Of(other));

    /// <summary>For people.</summary>
    public Sentence Words => (Length, Other) switch
    {
        (PlanLength.Short, { } full) => (Sentence)$"Short plan. {Forecast.Words}. The full plan: {full.Steps} steps, {Kg(full.Effort.Kg):0}, ±{Kg(full.AtHighestKg):0.00} (95 %).",
        (PlanLength.Full, { } brief) => (Sentence)$"Full plan. {Forecast.Words}. The short plan: {brief.Steps} steps, {Kg(brief.Effort.Kg):0}, ±{Kg(brief.AtHighestKg):0.00} (95 %).",
        _ => (Sentence)$"{Forecast.Words}.",
    };
}
