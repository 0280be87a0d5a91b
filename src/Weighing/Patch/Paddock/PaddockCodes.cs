namespace ScaleLink.Weighing.Patch.Paddock;

/// <summary>The codes of a watch over empty pads. A code never changes its meaning and is never used again.</summary>
public static class PaddockCodes
{
    /// <summary>Something stood on a pad for a while.</summary>
    public const string Touched = "SL-580";
    /// <summary>A zero stands elsewhere since the pad was touched.</summary>
    public const string ZeroJumped = "SL-581";
    /// <summary>A zero drifts.</summary>
    public const string ZeroDrifts = "SL-582";
    /// <summary>One pad warms unlike the others.</summary>
    public const string UnlikeTemperature = "SL-583";
    /// <summary>The ground under a pad gives way.</summary>
    public const string GroundMoves = "SL-584";
    /// <summary>A pad is used at a temperature far from that of its proof.</summary>
    public const string FarFromProof = "SL-585";
    /// <summary>Slope or warp of the patch is left in the loads.</summary>
    public const string LeftUncorrected = "SL-586";
    /// <summary>The watch ended before its time.</summary>
    public const string EndedEarly = "SL-587";
    /// <summary>Too little was seen to tell anything.</summary>
    public const string TooShort = "SL-588";
    /// <summary>A pad is loaded.</summary>
    public const string Loaded = "SL-589";
    /// <summary>A pad has no zero or no calibration.</summary>
    public const string Unzeroed = "SL-590";
    /// <summary>A pad is not live.</summary>
    public const string NotLive = "SL-591";
    /// <summary>A watch is under way.</summary>
    public const string UnderWay = "SL-592";
    /// <summary>No watch is under way.</summary>
    public const string NoWatch = "SL-593";
    /// <summary>A number of the request is not usable.</summary>
    public const string Input = "SL-594";
}
