using CarOnPads.Runtime;

namespace CarOnPads.Physics;

/// <summary>Refuses numbers that no car has, by the name they carry in the file.</summary>
static class CarCheck
{
    public static void Check(CarDescription car)
    {
        Within("wheelbase_m", car.WheelbaseM, 1, 6);
        Within("mass_kg", car.MassKg, 100, 5000);
        Within("front_weight", car.FrontWeight, 0.2, 0.8);
        Within("left_side_weight", car.LeftSideWeight, 0.3, 0.7);
        Within("cg_height_m", car.CgHeightM, 0.05, 1.5);
        Within("pitch_inertia_kg_m2", car.PitchInertiaKgM2, 10, 20000);
        Within("roll_inertia_kg_m2", car.RollInertiaKgM2, 5, 5000);
        Within("driver.kg", car.Driver.Kg, 0, 250);
        Check("front.", car.Front);
        Check("rear.", car.Rear);
        if (2 * (car.Front.UnsprungKg + car.Rear.UnsprungKg) >= car.MassKg / 3)
            Refuse("unsprung_kg", "a third of the car or more is unsprung");
        for (var i = 0; i < 4; i++)
            Within("warp_mm", car.WarpMm.ToFour()[i], -50, 50);
    }

    static void Check(string axle, AxleDescription a)
    {
        Within(axle + "track_m", a.TrackM, 0.5, 3);
        Within(axle + "unsprung_kg", a.UnsprungKg, 2, 150);
        Within(axle + "spring_n_per_mm", a.SpringNPerMm, 5, 500);
        Within(axle + "motion_ratio", a.MotionRatio, 0.2, 1.5);
        Within(axle + "perch_pitch_mm", a.PerchPitchMm, 0.1, 10);
        Within(axle + "tyre_n_per_mm", a.TyreNPerMm, 50, 800);
        Within(axle + "tyre_ns_per_m", a.TyreNsPerM, 0, 3000);
        Within(axle + "bump_ns_per_m", a.BumpNsPerM, 0, 20000);
        Within(axle + "rebound_ns_per_m", a.ReboundNsPerM, 0, 20000);
        Within(axle + "bar_n_per_mm", a.BarNPerMm, 0, 300);
        Within(axle + "bar_preload_mm", a.BarPreloadMm, -50, 50);
        Within(axle + "droop_mm", a.DroopMm, 5, 300);
        Within(axle + "bump_mm", a.BumpMm, 5, 300);
        Within(axle + "friction_n", a.FrictionN, 0, 500);
        Within(axle + "friction_n_per_mm", a.FrictionNPerMm, 1, 500);
        Within(axle + "scrub_ratio", a.ScrubRatio, 0, 0.5);
        Within(axle + "tyre_lateral_n_per_mm", a.TyreLateralNPerMm, 0, 500);
        Within(axle + "grip", a.Grip, 0, 2);
        Within(axle + "run_out_mm", a.RunOutMm, 0, 3);
    }

    static void Within(string name, double value, double low, double high)
    {
        if (!(value >= low && value <= high))
            Refuse(name, $"{value} is outside {low} to {high}");
    }

    static void Refuse(string name, string why) =>
        throw new SimulatorException("CP-103", $"{name}: {why}.", "Check the unit in the field's name.");
}
