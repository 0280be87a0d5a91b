using CarOnPads.Physics;

namespace CarOnPads.Tests.Physics;

public class JackTests
{
    [Fact]
    public void A_car_jacked_up_all_round_leaves_the_pads_empty_and_comes_back_to_the_same_loads()
    {
        var rig = new Rig(Cars.Heron, Cars.G, 1);
        var before = rig.Motion.Load;
        Cars.Run(rig, rig.Jack(Enum.GetValues<Wheel>(), Rig.ClearHeight) + 4);
        Assert.Equal(0, rig.Motion.Load.Peak);
        Cars.Run(rig, rig.Jack(Enum.GetValues<Wheel>(), null) - rig.Time + 15);
        foreach (var wheel in Enum.GetValues<Wheel>())
            Assert.Equal(before[wheel], rig.Motion.Load[wheel], 1e-3);
    }

    [Fact]
    public void No_pad_is_ever_pulled_while_the_car_is_jacked_and_dropped()
    {
        var rig = new Rig(Cars.Heron, Cars.G, 1);
        rig.Jack([Wheel.LF], 0.2);
        for (var i = 0; i < 24000; i++)
        {
            if (i == 12000)
                rig.Jack([Wheel.LF], null);
            rig.Advance();
            for (var pad = 0; pad < 4; pad++)
                Assert.True(rig.Motion.Load[pad] >= 0);
        }
    }

    // Moment balance about the jacks' line: what the rear pads carry, from the masses alone.
    [Fact]
    public void With_the_front_on_jacks_the_rear_pads_carry_what_the_lever_says()
    {
        var rig = new Rig(Cars.Heron, Cars.G, 1);
        rig.Jack([Wheel.LF, Wheel.RF], Rig.ClearHeight);
        rig.RestAtOnce();
        var m = rig.Motion;
        Assert.Equal(0, m.Load[Wheel.LF]);
        Assert.Equal(0, m.Load[Wheel.RF]);

        var car = Cars.Heron;
        var moment = car.MassKg * (car.FrontWeight - 0.5) * car.WheelbaseM + car.Driver.Kg * car.Driver.XM;
        var unsprung = 2 * (car.Front.UnsprungKg + car.Rear.UnsprungKg);
        var height = (car.MassKg - unsprung) * car.CgHeightM + car.Driver.Kg * car.Driver.ZM + rig.Chassis.UnsprungHeightMoment;
        moment += height * m.Pitch; // leaning nose-up takes the masses rearward
        var jack = 0.72 * car.WheelbaseM / 2;
        var rear = ((car.MassKg + car.Driver.Kg) * jack - moment) / (jack + car.WheelbaseM / 2);
        Assert.Equal(rear, Cars.Kilograms(m).Sum, 1e-6);
    }

    [Fact]
    public void A_car_that_starts_raised_leaves_the_pads_empty() =>
        Assert.Equal(0, new Rig(Cars.Heron, Cars.G, 1, raised: true).Motion.Load.Peak);
}
