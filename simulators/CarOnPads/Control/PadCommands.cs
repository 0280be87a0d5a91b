using CarOnPads.Cells;
using CarOnPads.Pads;
using CarOnPads.Physics;

namespace CarOnPads.Control;

/// <summary>What somebody does to the pads and the workshop.</summary>
static class PadCommands
{
    public static IEnumerable<Command> All =>
    [
        new("mass", "Put a mass on a pad in place of the one before; 0 kg takes it away.",
            """{"do":"mass","corner":"LF","kg":20,"x_mm":0,"y_mm":0}""", Mass),
        new("move-pads", "Carry every pad on by some places, RF to LF, LR to RF, RR to LR, LF to RR, and plug each in there.",
            """{"do":"move-pads","places":1}""", Move),
        new("pad-height", "Set the height of a pad's surface over the flat patch, mm.",
            """{"do":"pad-height","corner":"RR","mm":1.5}""", Height),
        new("pad-tilt", "Tilt a pad's surface, degrees (ISO 8855 signs).",
            """{"do":"pad-tilt","corner":"LR","pitch_deg":0.8,"roll_deg":-0.3}""", Tilt),
        new("tilt-zero", "Set what a pad's inclinometer says on level ground, degrees, in the pad's own axes.",
            """{"do":"tilt-zero","corner":"LF","pitch_deg":0.3,"roll_deg":-0.2}""", TiltZero),
        new("turn-pad", "Turn a pad by half a turn about the vertical, at its place; nothing may stand on it.",
            """{"do":"turn-pad","corner":"LF"}""", TurnRound),
        new("temperature", "Set the workshop's air, °C; the metal follows in ten minutes, or at once.",
            """{"do":"temperature","celsius":28,"at_once":true}""", Temperature),
        new("sun", "Let the sun on a pad: its metal comes to be so much warmer than the air, in ten minutes by 63 %; 0 is shade.",
            """{"do":"sun","corner":"RF","kelvin":12}""", Sun),
        new("imperfection", "Switch an imperfection.",
            """{"do":"imperfection","name":"noise","on":true}""", Switch),
    ];

    static Deed Mass(Arguments a)
    {
        var reach = 1e3 * Platform.Reach;
        var (wheel, kg) = (a.Wheel(), a.Number("kg", 0, 1500));
        var (forward, left) = (a.Number("x_mm", -reach, reach, 0), a.Number("y_mm", -reach, reach, 0));
        var atOnce = a.Flag("at_once", false);
        return (bay, reply) => reply["done_at"] = bay.PutMass(wheel, kg, forward * 1e-3, left * 1e-3, atOnce);
    }

    static Deed Move(Arguments a)
    {
        var places = (int)a.Number("places", 1, 3);
        return (bay, _) => bay.MovePads(places);
    }

    static Deed Height(Arguments a)
    {
        var (wheel, mm) = (a.Wheel(), a.Number("mm", -50, 50));
        return (bay, reply) => reply["done_at"] = bay.Rig.PadHeight(wheel, mm * 1e-3);
    }

    static Deed Tilt(Arguments a)
    {
        var (wheel, pitch, roll) = (a.Wheel(), a.OptionalNumber("pitch_deg", -15, 15), a.OptionalNumber("roll_deg", -15, 15));
        return (bay, _) =>
        {
            var pad = bay.Pad(wheel);
            pad.PitchDegrees = pitch ?? pad.PitchDegrees;
            pad.RollDegrees = roll ?? pad.RollDegrees;
        };
    }

    static Deed TiltZero(Arguments a)
    {
        var (wheel, largest) = (a.Wheel(), TiltZeros.Largest);
        var (pitch, roll) = (a.OptionalNumber("pitch_deg", -largest, largest), a.OptionalNumber("roll_deg", -largest, largest));
        return (bay, _) =>
        {
            var pad = bay.Pad(wheel);
            pad.TiltZero = (pitch ?? pad.TiltZero.Pitch, roll ?? pad.TiltZero.Roll);
        };
    }

    static Deed TurnRound(Arguments a)
    {
        var wheel = a.Wheel();
        return (bay, reply) => reply["done_at"] = bay.TurnPad(wheel);
    }

    static Deed Temperature(Arguments a)
    {
        var (celsius, atOnce) = (a.Number("celsius", -20, 60), a.Flag("at_once", false));
        return (bay, _) =>
        {
            foreach (var wheel in Enum.GetValues<Wheel>())
                bay.Pad(wheel).Air(celsius, atOnce);
        };
    }

    static Deed Sun(Arguments a)
    {
        var (wheel, kelvin) = (a.Wheel(), a.Number("kelvin", 0, 40));
        return (bay, _) => bay.Pad(wheel).Sun(kelvin);
    }

    static Deed Switch(Arguments a)
    {
        var (imperfection, on) = (Imperfections.Find(a.Text("name")), a.Flag("on"));
        return (bay, _) => bay.SetImperfection(imperfection, on);
    }
}
