namespace CarOnPads.Physics;

/// <summary>Stiff parts that touch only on one side: travel stops and jacks.</summary>
static class Stops
{
    /// <summary>Rubber of a travel stop, N/m.</summary>
    public const double Rate = 8e5;
    /// <summary>A jack with its saddle, N/m.</summary>
    public const double JackRate = 1.5e6;
    /// <summary>A jack's own damping, N s/m.</summary>
    public const double JackDamping = 8e3;
    /// <summary>Jacking points as part of the way from the middle of the car to the wheel.</summary>
    public const double JackReach = 0.72;

    /// <summary>Force (positive pushes apart) and stiffness of the two stops at one wheel; compression positive.</summary>
    public static (double Force, double Rate) Travel(WheelStation station, double compression)
    {
        var beyondBump = compression - station.BumpTravel;
        if (beyondBump > 0)
            return (Rate * beyondBump, Rate);
        var beyondDroop = compression + station.DroopTravel;
        return beyondDroop < 0 ? (Rate * beyondDroop, Rate) : (0, 0);
    }
}
