using MathNet.Numerics.LinearAlgebra;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>
/// What is known about one car in one session: where its cross weight stands, and what its perches do. Each recorded step
/// sharpens both by one linear Bayesian update, in which readings share no error with each other but the car shares its
/// rates with every step. Immutable: the same records give the same knowledge again.
/// </summary>
sealed class StepLearner
{
    readonly Vector<double> mean;
    readonly Matrix<double> covariance;

    StepLearner(TurnEffects effects, LoadSummary last, Corners turnsMade, Corners turnsInSession, double settleRepeatability, Vector<double> mean, Matrix<double> covariance)
    {
        Last = last;
        TurnsMade = turnsMade;
        TurnsInSession = turnsInSession;
        SettleRepeatabilityPercent = settleRepeatability;
        this.mean = mean;
        this.covariance = covariance;
        Effects = effects.Learned(mean.SubVector(1, mean.Count - 1), covariance.SubMatrix(1, mean.Count - 1, 1, mean.Count - 1));
        CrossWeightPercent = Expected(default, settleRepeatability: 0, readingUncertainty: 0);
    }

    /// <summary>What the perches do, by all that is known now.</summary>
    public TurnEffects Effects { get; }

    /// <summary>The last loads weighed.</summary>
    public LoadSummary Last { get; }

    /// <summary>Turns made since the first reading that still counts.</summary>
    public Corners TurnsMade { get; }

    /// <summary>All turns recorded since the start, whether they taught something or not.</summary>
    public Corners TurnsInSession { get; }

    /// <summary>The car with the thread that these turns left.</summary>
    public CarModel CarNow
    {
        get
        {
            var (car, turns) = (Effects.Statics.Car, TurnsInSession);
            return car with { Suspension = new(At(Corner.LF), At(Corner.RF), At(Corner.LR), At(Corner.RR)) };

            CornerSetup At(Corner c) => car.Suspension[c] with { Perch = car.Suspension[c].Perch.After(turns[c]) };
        }
    }

    /// <summary>Standard deviation of cross weight from one settling to the next, percent: friction and scrub leave it.</summary>
    public double SettleRepeatabilityPercent { get; }

    /// <summary>
    /// Cross weight as the car stands, percent: the mean over settlings, from all readings together. Better than the last
    /// reading alone, because that one carries the repeatability of its own settling.
    /// </summary>
    public Value CrossWeightPercent { get; }

    /// <summary>Starts from a car model and the first settled reading.</summary>
    /// <param name="statics">The car.</param>
    /// <param name="first">Loads of the first settled reading.</param>
    /// <param name="settleRepeatabilityPercent">One standard deviation of cross weight between settlings, percent.</param>
    /// <exception cref="DiagnosticException">The repeatability is not above zero.</exception>
    public static StepLearner Start(CarStatics statics, LoadSummary first, double settleRepeatabilityPercent = 0.1)
    {
        if (!(settleRepeatabilityPercent is > 0 and < 10))
            throw new DiagnosticException(new Diagnostic(SessionCodes.StepUnusable, $"The repeatability between settlings is {settleRepeatabilityPercent} %.",
                "Settle and weigh the untouched car a few times and give the standard deviation of its cross weight."));
        var effects = TurnEffects.Of(statics);
        return From(effects, first, default, settleRepeatabilityPercent);
    }

    /// <summary>
    /// Starts again from a new reading, for a car that was changed by something else than its perches (ballast, a driver,
    /// tyres). What was learned about the perches stays.
    /// </summary>
    public StepLearner Restart(LoadSummary reading) => From(Effects, reading, TurnsInSession, SettleRepeatabilityPercent);

    /// <summary>
    /// The same car seen with something added to every reading that was not in the earlier ones, such as a correction that was switched
    /// on since. What was learned stays.
    /// </summary>
    /// <param name="addedKg">What later readings have more than the earlier ones, kg; taken as exactly known.</param>
    public StepLearner Shifted(in Corners addedKg)
    {
        if (addedKg == default)
            return this;
        var last = new LoadSummary(Last.Loads + addedKg, Last.Covariance, Last.DegreesOfFreedom);
        var moved = mean.Clone();
        moved[0] += last.CrossWeightPercent.Estimate - Last.CrossWeightPercent.Estimate;
        return new(Effects, last, TurnsMade, TurnsInSession, SettleRepeatabilityPercent, moved, covariance);
    }

    /// <summary>Cross weight that the next settled reading should show after these turns, percent.</summary>
    /// <param name="turns">Turns from here, up positive.</param>
    /// <param name="readingUncertainty">Standard uncertainty of that reading, percent; null: as the last one.</param>
    public Value NextReading(in Corners turns, double? readingUncertainty = null) =>
        Expected(turns, SettleRepeatabilityPercent, readingUncertainty ?? Last.CrossWeightPercent.Uncertainty);

    /// <summary>
    /// Checks a step against its prediction and learns from it. A step that disagrees teaches nothing about the perches until
    /// the crew confirms it, but it does cast uncertainty on the model, which makes the next step teach more. Of a step that was
    /// weighed before the car had settled only the turns count; where the car then stands is predicted.
    /// </summary>
    /// <returns>The check, and the knowledge afterwards.</returns>
    /// <exception cref="DiagnosticException">A turn is not a number, or went into a fixed perch.</exception>
    public (StepCheck Check, StepLearner Next) Record(StepRecord step)
    {
        foreach (var corner in Corners.All)
            if (!double.IsFinite(step.Turns[corner]) || (step.Turns[corner] != 0 && !Effects.Statics.Car.Suspension[corner].Perch.CanTurn))
                throw new DiagnosticException(new Diagnostic(SessionCodes.StepUnusable, $"The step turned {corner} by {step.Turns[corner]}.",
                    "Give turns as numbers, and none for a fixed perch; correct the car model if it does turn."));
        var check = StepJudge.Check(this, step);
        return (check, step switch
        {
            { Settled: false } => Book(step),
            _ when check.Agrees => Learn(step),
            { Confirmed: true } => Questioning().Learn(step),
            _ => From(Questioning().Effects, step.After, TurnsInSession + step.Turns, SettleRepeatabilityPercent),
        });
    }

    static StepLearner From(TurnEffects effects, LoadSummary reading, Corners turnsInSession, double settleRepeatability)
    {
        var count = effects.Mean.Count;
        var mean = Vector<double>.Build.Dense(1 + count);
        var covariance = Matrix<double>.Build.Dense(1 + count, 1 + count);
        mean[0] = reading.CrossWeightPercent.Estimate;
        covariance[0, 0] = Variance(settleRepeatability, reading.CrossWeightPercent.Uncertainty);
        mean.SetSubVector(1, count, effects.Mean);
        covariance.SetSubMatrix(1, 1, effects.Covariance);
        return new(effects, reading, default, turnsInSession, settleRepeatability, mean, covariance);
    }

    StepLearner Book(StepRecord step)
    {
        var forecast = Effects.Forecast(step.Turns);
        var expected = new LoadSummary(Last.Loads + forecast.Loads, Last.Covariance + forecast.LoadCovariance, Last.DegreesOfFreedom);
        return new(Effects, expected, TurnsMade + step.Turns, TurnsInSession + step.Turns, SettleRepeatabilityPercent, mean, covariance);
    }

    // Twice the uncertainty about everything the car model says.
    StepLearner Questioning()
    {
        var wider = covariance.Clone();
        wider.SetSubMatrix(1, 1, 4 * covariance.SubMatrix(1, mean.Count - 1, 1, mean.Count - 1));
        for (var i = 1; i < mean.Count; i++)
            (wider[0, i], wider[i, 0]) = (2 * covariance[0, i], 2 * covariance[i, 0]);
        return new(Effects, Last, TurnsMade, TurnsInSession, SettleRepeatabilityPercent, mean, wider);
    }

    StepLearner Learn(StepRecord step)
    {
        var turnsMade = TurnsMade + step.Turns;
        var shows = Shows(turnsMade);
        var spread = covariance * shows;
        var noise = Variance(SettleRepeatabilityPercent, step.After.CrossWeightPercent.Uncertainty);
        var gain = spread / (shows * spread + noise);
        var surprise = step.After.CrossWeightPercent.Estimate - NextReading(step.Turns).Estimate;
        var learned = covariance - gain.OuterProduct(spread);
        return new(Effects, step.After, turnsMade, TurnsInSession + step.Turns, SettleRepeatabilityPercent, mean + surprise * gain, (learned + learned.Transpose()) / 2);
    }

    Value Expected(in Corners turns, double settleRepeatability, double readingUncertainty)
    {
        var turnsMade = TurnsMade + turns;
        var shows = Shows(turnsMade);
        var nominal = CrossWeightSlope.Dot(Effects.Statics.LoadsPerTurn * turnsMade);
        return new(nominal + shows * mean, Math.Sqrt(Math.Max(0, shows * (covariance * shows)) + Variance(settleRepeatability, readingUncertainty)));
    }

    // How the state (start, then each uncertainty of the car) shows in a reading after so many turns since the start.
    Vector<double> Shows(Corners turnsMade)
    {
        var shows = Vector<double>.Build.Dense(mean.Count, 1);
        shows.SetSubVector(1, mean.Count - 1, Effects.ShowsIn(CrossWeightSlope, turnsMade));
        return shows;
    }

    // Turns do not change the total, so a share is linear in the loads.
    Corners CrossWeightSlope => 100 / Effects.Statics.TotalKg * Shares.CrossWeight;

    static double Variance(double a, double b) => a * a + b * b;
}
