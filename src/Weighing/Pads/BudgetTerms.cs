namespace ScaleLink.Weighing.Pads;

/// <summary>Names of the terms of a pad's uncertainty budget.</summary>
static class BudgetTerms
{
    /// <summary>Repeatability of the points about the curve.</summary>
    public const string Fit = "fit";
    /// <summary>The known masses.</summary>
    public const string Masses = "masses";
    /// <summary>Span as stated by a data sheet.</summary>
    public const string StatedSpan = "stated span";
    /// <summary>Buoyancy of air.</summary>
    public const string Buoyancy = "air buoyancy";
    /// <summary>Rounding of the indication.</summary>
    public const string Resolution = "resolution";
    /// <summary>Empty pad after against before.</summary>
    public const string ZeroReturn = "zero return";
    /// <summary>Way down against way up.</summary>
    public const string Hysteresis = "hysteresis";
    /// <summary>Placing the same load again.</summary>
    public const string Repeatability = "repeatability";
    /// <summary>Change under a lasting load.</summary>
    public const string Creep = "creep";
    /// <summary>What the curve's shape leaves in.</summary>
    public const string Linearity = "linearity";
    /// <summary>Where on the pad the load stands.</summary>
    public const string Position = "position";
    /// <summary>Temperature against that of the calibration procedure.</summary>
    public const string Temperature = "temperature";
    /// <summary>Gravity here against that of the calibration procedure.</summary>
    public const string Gravity = "gravity";
}
