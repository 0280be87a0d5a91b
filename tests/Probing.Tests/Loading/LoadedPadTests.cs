using ScaleLink.Probing.Loading;

namespace Probing.Tests.Loading;

/// <summary>Who stands on which pad, and which numbers of a device are its cells. Invented devices; the person weighs 80 kg.</summary>
public class LoadedPadTests
{
    private const double PersonKg = 80;
    private readonly Random _random = new(7);

    [Fact]
    public void A_person_who_steps_on_and_off_shows_the_cells_of_pad_frames()
    {
        var cells = Walk(Plain(4), t => [.. Enumerable.Range(1, 4).Select(k => 1000 * k + Load(t) * 500 * k + Noise(4))]);
        Assert.Equal(Plain(4), cells);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(20)]
    public void A_display_with_whole_tenths_is_understood_at_any_rate(double hz)
    {
        // Gross, net and tare: gross and net are the same number.
        var cells = Walk(Plain(3), t => Tenths(Load(t, 15, 20)) is var kg ? [kg, kg, 0] : [], hz, seconds: 60);
        Assert.Equal([new NumberPlace(0, NumberForm.Plain)], cells);
    }

    [Fact]
    public void Whoever_only_leaves_a_pad_has_not_shown_it()
    {
        Assert.Empty(Walk(Plain(1), t => [Load(t < 5 ? 7 : 0) + Noise(0.02)], seconds: 15));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    public void Noise_drift_and_a_last_digit_that_flickers_are_no_person(double hz) => Assert.Empty(
        Walk(Plain(3), t => [Noise(5), 100 * t + Noise(5), Math.Floor(t) % 7 == 3 ? 0.1 : 0], hz, seconds: 120));

    [Theory]
    [InlineData("S16")]
    [InlineData("S32HighFirst")]
    [InlineData("S32LowFirst")]
    [InlineData("F32HighFirst")]
    [InlineData("F32LowFirst")]
    public void The_form_of_registers_is_seen_from_how_they_move(string name)
    {
        var form = Enum.Parse<NumberForm>(name);
        // Four cells, then pitch, roll and temperature, which hardly move, and a status that does not.
        var width = form == NumberForm.S16 ? 1 : 2;
        var cells = Walk(RegisterForms.Places(4 * width + 4), t => RegisterForms.Values([
            .. Enumerable.Range(1, 4).SelectMany(k => Write(form, Cell(form, k, t))),
            Short(12 + Noise(1)), Short(-30 + Noise(1)), Short(2150 + Noise(0.6)), 0]));
        Assert.Equal(Enumerable.Range(0, 4).Select(k => new NumberPlace(k * width, form)), cells);
    }

    [Fact]
    public void A_long_load_is_taken_for_rest_and_its_going_says_nothing()
    {
        // A box stands on the pad for a minute; the person comes half a minute after it has gone.
        var cells = Walk(Plain(1), t => [(t is > 10 and < 70 ? 40 : 0) + Load(t, 105) + Noise(0.02)], seconds: 130);
        Assert.Equal(Plain(1), cells);
    }

    private double Load(double t, double on = 6, double stays = 8) => t > on && t < on + stays ? PersonKg * Math.Min(1, Math.Min(t - on, on + stays - t) / 0.6) + Noise(0.1) : 0;

    private double Cell(NumberForm form, int cell, double t) => form switch
    {
        NumberForm.S16 => 200 * cell + Load(t) * 20 * cell + Noise(1),
        NumberForm.F32HighFirst or NumberForm.F32LowFirst => 0.4 * cell + Load(t) * 0.1 * cell + Noise(0.01),
        _ => 40_000 * cell + Load(t) * 2_000 * cell + Noise(12),
    };

    private static IEnumerable<ushort> Write(NumberForm form, double value)
    {
        if (form == NumberForm.S16)
            return [Short(value)];
        var bits = form is NumberForm.F32HighFirst or NumberForm.F32LowFirst ? BitConverter.SingleToInt32Bits((float)value) : (int)Math.Round(value);
        ushort[] highFirst = [(ushort)(bits >> 16), (ushort)bits];
        return form is NumberForm.S32HighFirst or NumberForm.F32HighFirst ? highFirst : highFirst.Reverse();
    }

    private static ushort Short(double value) => (ushort)(short)Math.Round(value);

    private static double Tenths(double kg) => Math.Round(kg, 1);

    private static IReadOnlyList<NumberPlace> Plain(int numbers) => [.. Enumerable.Range(0, numbers).Select(k => new NumberPlace(k, NumberForm.Plain))];

    // Sum of twelve evens: near enough to a normal distribution.
    private double Noise(double deviation) => deviation * (Enumerable.Range(0, 12).Sum(_ => _random.NextDouble()) - 6);

    private static IReadOnlyList<NumberPlace> Walk(IReadOnlyList<NumberPlace> places, Func<double, double[]> says, double hz = 10, double seconds = 25)
    {
        var pad = new LoadedPad(places);
        IReadOnlyList<NumberPlace> cells = [];
        for (var t = 0.0; t < seconds; t += 1 / hz)
            if (pad.Take(TimeSpan.FromSeconds(t), says(t)) is { } seen)
                cells = cells.Count == 0 ? seen : throw new InvalidOperationException("Seen twice.");
        return cells;
    }
}
