using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;

namespace Client.Tests.Readings;

/// <summary>What a crew is told in passing of the corrections that are in its loads.</summary>
public class PatchWordsTests
{
    [Fact]
    public void Without_a_correction_of_the_patch_nothing_is_said()
    {
        Assert.Empty(PatchWords.Of(Readouts.Settled(), Glyphs.Rich));
        // Zero and span are the pad's own.
        Assert.Empty(PatchWords.Of(With(("zero", [1, 2, 3, 4]), ("tilt", [0.1, 0.1, 0.1, 0.1])), Glyphs.Rich));
        Assert.DoesNotContain("patch", Line(Readouts.Settled()));
    }

    [Fact]
    public void Each_that_is_on_stands_with_its_size_at_the_wheel_it_changes_most()
    {
        var loads = With(("slope", [0.3, 0.3, -0.3, -0.35]), ("warp", [1.2, -1.26, -1.1, 1.1]));
        Assert.Equal("patch: slope 0.4 kg, warp 1.3 kg", PatchWords.Of(loads, Glyphs.Rich));
        Assert.EndsWith(", patch: slope 0.4 kg, warp 1.3 kg; high by 2.14 %", Line(loads));
        Assert.Equal("patch: warp 0.0 kg", PatchWords.Of(With(("warp", [0, 0, 0, 0])), Glyphs.Rich));
    }

    [Fact]
    public void One_that_was_refused_is_said_to_be() =>
        Assert.Equal("patch: slope 0.4 kg, warp REFUSED", PatchWords.Of(With(("slope", [0.4, 0.4, -0.4, -0.4]), ("warp", [null, null, null, null])), Glyphs.Rich));

    [Fact]
    public void A_reading_on_record_says_the_same()
    {
        var weighing = new WeighingRecord { Patch = { new PatchInReading { Name = "slope" }, new PatchInReading { Name = "warp", SizeKg = new() { Lf = 1.2, Rf = -1.26, Lr = -1.1, Rr = 1.1 } } } };
        Assert.Equal("patch: slope REFUSED, warp 1.3 kg", PatchWords.Of(weighing, Glyphs.Rich));
        Assert.Empty(PatchWords.Of(new WeighingRecord(), Glyphs.Rich));
    }

    private static string Line(Loads loads) => new PlainLine(Glyphs.Plain).Of(loads);

    private static Loads With(params (string Name, double?[] SizesKg)[] corrections)
    {
        var loads = Readouts.Settled();
        foreach (var (name, sizes) in corrections)
            for (var i = 0; i < sizes.Length; i++)
            {
                var correction = new Correction { Name = name };
                if (sizes[i] is { } kg)
                    correction.SizeKg = kg;
                else
                    correction.Reason = "the tyre rates are only guessed";
                loads.Corners[i].Corrections.Add(correction);
            }

        return loads;
    }
}
