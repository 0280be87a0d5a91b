using ScaleLink.Measure;

namespace ScaleLink.Api.V1;

public sealed partial class Standing
{
    /// <summary>The verdict, as it is used for live loads.</summary>
    public Aim Aim => Verdict switch
    {
        AimVerdict.OnTarget => Aim.Within,
        AimVerdict.High => Aim.High,
        AimVerdict.Low => Aim.Low,
        AimVerdict.TooCloseToTell => Aim.TooCloseToTell,
        _ => Aim.Unknown,
    };
}
