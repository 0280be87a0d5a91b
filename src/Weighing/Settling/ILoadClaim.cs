namespace ScaleLink.Weighing.Settling;

/// <summary>An estimate of the settled loads that knows how the errors of the four go together.</summary>
interface ILoadClaim
{
    /// <summary>Settled loads, kg.</summary>
    Corners Loads { get; }

    /// <summary>One standard uncertainty of each, kg.</summary>
    Corners StandardUncertainty { get; }

    /// <summary>Variance of a combination of the four loads, in the squared unit of the combination.</summary>
    double VarianceOf(in Corners weights);
}
