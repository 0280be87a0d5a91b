using MathNet.Numerics.LinearAlgebra;

namespace ScaleLink.Weighing.Statics;

/// <summary>
/// What a turn of each perch does to loads and ride heights, with the uncertainties that the rates leave. The uncertainties are kept as
/// independent causes (a spring, a tyre, a motion ratio), so that what is learned about a cause from one step sharpens
/// loads and heights of every later one.
/// </summary>
sealed class TurnEffects
{
    readonly IReadOnlyList<Cause> causes;
    readonly Vector<double> mean;
    readonly Matrix<double> covariance;

    TurnEffects(CarStatics statics, IReadOnlyList<Cause> causes, Vector<double> mean, Matrix<double> covariance)
    {
        Statics = statics;
        this.causes = causes;
        this.mean = mean;
        this.covariance = covariance;
        LoadsPerTurn = statics.LoadsPerTurn;
        HeightsPerTurn = statics.HeightsPerTurn;
        for (var i = 0; i < causes.Count; i++)
        {
            LoadsPerTurn += mean[i] * causes[i].Loads;
            HeightsPerTurn += mean[i] * causes[i].Heights;
        }
    }

    /// <summary>The car as stated.</summary>
    public CarStatics Statics { get; }

    /// <summary>Change of load (row, kg) for one turn of a perch (column), by what is known now.</summary>
    public CornerMatrix LoadsPerTurn { get; }

    /// <summary>Change of height (row, mm) for one turn of a perch (column), by what is known now.</summary>
    public CornerMatrix HeightsPerTurn { get; }

    /// <summary>How many independent uncertainties there are.</summary>
    internal int CauseCount => causes.Count;

    /// <summary>Each uncertainty in its own standard uncertainties: zero means as stated.</summary>
    internal Vector<double> Mean => mean;

    /// <summary>Covariance of <see cref="Mean"/>; the identity before anything is learned.</summary>
    internal Matrix<double> Covariance => covariance;

    /// <summary>From the stated model alone.</summary>
    public static TurnEffects Of(CarStatics statics)
    {
        List<Cause> causes = [];
        foreach (var uncertainty in ModelUncertainty.Of(statics.Car))
        {
            CarStatics lower = statics.WithUncertainty(uncertainty.Lower), upper = statics.WithUncertainty(uncertainty.Upper);
            causes.Add(new(uncertainty.Name,
                uncertainty.PerStep / 2 * (upper.LoadsPerTurn - lower.LoadsPerTurn),
                uncertainty.PerStep / 2 * (upper.HeightsPerTurn - lower.HeightsPerTurn)));
        }
        return new(statics, causes, Vector<double>.Build.Dense(Math.Max(1, causes.Count)),
            Matrix<double>.Build.DenseIdentity(Math.Max(1, causes.Count)));
    }

    /// <summary>What these turns should do, and how well that is known.</summary>
    public TurnForecast Forecast(in Corners turns)
    {
        var perLoad = new Corners[causes.Count];
        var perHeight = new Corners[causes.Count];
        for (var i = 0; i < causes.Count; i++)
            (perLoad[i], perHeight[i]) = (causes[i].Loads * turns, causes[i].Heights * turns);
        return new(LoadsPerTurn * turns, Spread(perLoad), HeightsPerTurn * turns, Spread(perHeight));
    }

    /// <summary>
    /// How strongly each uncertainty would show in the combination <paramref name="weights"/> of the loads after these turns,
    /// for one of its standard uncertainties.
    /// </summary>
    internal Vector<double> ShowsIn(Corners weights, Corners turns)
    {
        var shows = Vector<double>.Build.Dense(mean.Count);
        for (var i = 0; i < causes.Count; i++)
            shows[i] = weights.Dot(causes[i].Loads * turns);
        return shows;
    }

    /// <summary>The same causes with what has been learned about them.</summary>
    internal TurnEffects Learned(Vector<double> newMean, Matrix<double> newCovariance) => new(Statics, causes, newMean, newCovariance);

    CornerMatrix Spread(Corners[] effects)
    {
        var spread = default(CornerMatrix);
        for (var i = 0; i < effects.Length; i++)
        {
            var along = default(Corners);
            for (var j = 0; j < effects.Length; j++)
                along += covariance[i, j] * effects[j];
            spread += CornerMatrix.Outer(effects[i], along);
        }
        return spread;
    }

    sealed record Cause(string Name, CornerMatrix Loads, CornerMatrix Heights);
}
