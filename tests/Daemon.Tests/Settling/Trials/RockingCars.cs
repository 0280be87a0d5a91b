using CarOnPads.Physics;

namespace Daemon.Tests.Settling.Trials;

/// <summary>Random cars for the simulator, lightly to well damped, on unlike springs when they are to rock hard.</summary>
internal static class RockingCars
{
    private const double Gravity = 9.81;

    public static CarDescription Draw(Random random, RockingKind kind)
    {
        double U(double low, double high) => low + (high - low) * random.NextDouble();
        double LogU(double low, double high) => Math.Exp(U(Math.Log(low), Math.Log(high)));
        double mass = U(900, 1400), front = U(.42, .58), wheelbase = U(2.3, 2.7), track = U(1.4, 1.6);
        var unsprung = (Front: U(28, 42), Rear: U(28, 42));
        var sprung = mass - 2 * (unsprung.Front + unsprung.Rear);
        var hertz = U(1.4, 2.8);
        var rear = hertz * (kind.Thrown ? U(.6, 1.6) : U(.9, 1.25));
        var damping = kind.Thrown ? U(.03, .25) : LogU(.05, .30);
        var asymmetry = kind.Friction ? U(1, 2.5) : 1;
        var friction = LogU(5, 80);
        var stuck = U(100, 400);
        var (tyre, tyreDamping) = (U(180, 260), U(300, 600));

        AxleDescription Axle(double carried, double hz, double unsprungKg)
        {
            var spring = Math.Pow(2 * Math.PI * hz, 2) * carried;
            // Hard rocking is described with damping that goes with stiffness but for 20 % up or down.
            var damper = kind.Thrown ? damping / (Math.PI * hertz) * spring * U(.8, 1.2) : 2 * damping * Math.Sqrt(spring * carried);
            return new AxleDescription
            {
                TrackM = track, UnsprungKg = unsprungKg, SpringNPerMm = spring / 1000, MotionRatio = 1, PerchPitchMm = 2,
                TyreNPerMm = tyre, TyreNsPerM = tyreDamping, BumpNsPerM = 2 * damper / (1 + asymmetry), ReboundNsPerM = 2 * damper * asymmetry / (1 + asymmetry),
                BarNPerMm = 0, DroopMm = 200, BumpMm = 200, FrictionN = friction * U(.7, 1.3), FrictionNPerMm = stuck,
                ScrubRatio = 0, TyreLateralNPerMm = 150, Grip = .9, RunOutMm = 0,
            };
        }

        return new CarDescription
        {
            Name = "trial", WheelbaseM = wheelbase, MassKg = mass, FrontWeight = front, LeftSideWeight = U(.47, .53), CgHeightM = U(.35, .5),
            PitchInertiaKgM2 = sprung * U(.8, 1.1) * wheelbase * wheelbase * front * (1 - front), RollInertiaKgM2 = sprung * Math.Pow(U(.33, .42) * track, 2),
            Driver = new PlacedMass(80, -.15, .34, .45),
            Front = Axle(sprung * front / 2, hertz, unsprung.Front), Rear = Axle(sprung * (1 - front) / 2, rear, unsprung.Rear),
            WarpMm = new CornerValues(U(-3, 3), U(-3, 3), U(-3, 3), U(-3, 3)),
        };
    }

    /// <summary>Spring at the wheel in series with the tyre, N/mm.</summary>
    public static double RideRate(AxleDescription axle) => 1 / (1 / (axle.SpringNPerMm * axle.MotionRatio * axle.MotionRatio) + 1 / axle.TyreNPerMm);
}
