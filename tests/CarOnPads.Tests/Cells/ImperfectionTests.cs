using CarOnPads.Physics;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Tests.Cells;

/// <summary>Each imperfection alone, with the size that docs/simulator.md states, measured through the pads' bytes.</summary>
public class ImperfectionTests
{
    [Fact]
    public void With_none_the_counts_are_exact_but_for_their_rounding()
    {
        using var bench = new Bench(raised: false);
        foreach (var wheel in Enum.GetValues<Wheel>())
        {
            var sample = bench.Listen(0.1, wheel).Samples[^1];
            Assert.Equal(bench.Bay.Loads[wheel], Bench.Sum(sample) * bench.Bay.Pad(wheel).KgPerCount, 0.0011);
        }
    }

    [Theory]
    [InlineData("friction")]
    [InlineData("scrub")]
    [InlineData("run-out")]
    public void Friction_scrub_and_run_out_each_leave_a_warp_behind(string name)
    {
        using var bench = new Bench(name, hertz: 10, raised: false);
        var loads = new List<double>();
        for (var i = 0; i < 5; i++)
        {
            bench.Do("""{"do":"settle","seconds":2}""");
            bench.Run(2.1);
            loads.Add(bench.Bay.TrueLoads()[Wheel.LF]);
        }

        Assert.InRange(loads.Max() - loads.Min(), 0.05, 3);
    }

    [Fact]
    public void Position_loads_the_cells_unequally_but_not_the_pad()
    {
        using var bench = new Bench("position", raised: false);
        bench.Do("""{"do":"settle","by":"roll","seconds":1}""");
        bench.Run(8);
        var sample = bench.Listen(0.1).Samples[^1];
        Assert.Equal(bench.Bay.Loads[Wheel.LF], Bench.Sum(sample) * 0.0005, 0.0011);
        Assert.InRange(Math.Abs(sample[0] - sample[3]) * 0.0005, 0.5, 60);
    }

    [Fact]
    public void Dead_load_puts_the_platform_into_the_counts()
    {
        using var bench = new Bench("dead-load");
        Assert.Equal(6.4, bench.Kilograms(), 0.0011);
    }

    [Fact]
    public void Offset_moves_each_cell_and_leaves_differences_alone()
    {
        using var bench = new Bench("offset");
        var empty = bench.Listen(0.1).Samples[^1];
        for (var cell = 0; cell < 4; cell++)
            Assert.InRange(Math.Abs(empty[cell]), 100, 20000);
        bench.PutMass(20);
        Assert.Equal(20, (Bench.Sum(bench.Listen(0.1).Samples[^1]) - Bench.Sum(empty)) * 0.0005, 0.003);
    }

    [Fact]
    public void Unequal_cells_make_the_reading_depend_on_the_place()
    {
        using var bench = new Bench("unequal-cells");
        var readings = new List<double>();
        foreach (var (forward, left) in new[] { (0.15, 0.15), (0.15, -0.15), (-0.15, 0.15), (-0.15, -0.15) })
        {
            bench.PutMass(100, forward, left);
            readings.Add(bench.Kilograms(0.1));
        }

        Assert.InRange(readings.Max() - readings.Min(), 0.05, 0.6);
        Assert.All(readings, kg => Assert.InRange(kg, 99.7, 100.3));
    }

    [Fact]
    public void Span_scales_the_whole_pad()
    {
        using var bench = new Bench("span");
        bench.PutMass(100);
        var at100 = bench.Kilograms(0.1);
        bench.PutMass(300);
        Assert.InRange(Math.Abs(at100 - 100), 0.01, 0.4);
        Assert.Equal(3 * at100, bench.Kilograms(0.1), 0.005);
    }

    [Theory]
    [InlineData(80, 0.1)]
    [InlineData(320, 0.2)]
    public void Noise_is_a_tenth_of_a_kilogram_a_pad_at_80_a_second_and_keeps_its_density(double hertz, double kg)
    {
        using var bench = new Bench("noise", hertz);
        Assert.InRange(Deviation(bench.Listen(1600 / hertz).Samples, s => Bench.Sum(s) * 0.0005), 0.93 * kg, 1.07 * kg);
    }

    [Fact]
    public void Quantisation_takes_coarse_steps()
    {
        using var bench = new Bench("quantisation");
        bench.PutMass(33.333);
        var sample = bench.Listen(0.1).Samples[^1];
        for (var cell = 0; cell < 4; cell++)
            Assert.Equal(0, sample[cell] % 32);
        Assert.NotEqual(0, sample[0]);
        Assert.InRange(Math.Abs(Bench.Sum(sample) * 0.0005 - 33.333), 0.0012, 0.032);
    }

    [Fact]
    public void Creep_moves_the_reading_under_a_constant_load_and_ever_more_slowly()
    {
        using var bench = new Bench("creep", hertz: 10);
        bench.PutMass(200);
        var start = bench.Kilograms(0.2);
        bench.Run(100);
        var middle = bench.Kilograms(0.2);
        bench.Run(100);
        var end = bench.Kilograms(0.2);
        Assert.InRange(Math.Abs(end - start), 0.004, 0.06);
        Assert.True(Math.Abs(end - middle) < Math.Abs(middle - start));
    }

    [Fact]
    public void Hysteresis_reads_more_on_the_way_down()
    {
        using var bench = new Bench("hysteresis");
        bench.PutMass(100);
        var up = bench.Kilograms(0.1);
        bench.PutMass(300);
        bench.PutMass(100);
        Assert.Equal(0.16, bench.Kilograms(0.1) - up, 0.003);
    }

    [Fact]
    public void Non_linearity_bows_between_zero_and_capacity()
    {
        using var bench = new Bench("non-linearity");
        bench.PutMass(500);
        var half = bench.Kilograms(0.1);
        bench.PutMass(1000);
        var full = bench.Kilograms(0.1);
        Assert.Equal(1000, full, 0.003);
        Assert.InRange(Math.Abs(half - full / 2), 0.01, 0.2);
    }

    [Fact]
    public void Temperature_moves_the_zero_of_every_cell_and_the_span()
    {
        using var bench = new Bench("temperature");
        bench.Do("""{"do":"temperature","celsius":30,"at_once":true}""");
        var warm = bench.Listen(0.1).Samples[^1];
        Assert.Equal(30, warm.TemperatureCelsius!.Value, 0.01);
        for (var cell = 0; cell < 4; cell++)
            Assert.InRange(Math.Abs(warm[cell] * 0.0005), 0.02 - 0.001, 0.05 + 0.001);
        bench.PutMass(400);
        Assert.InRange(Math.Abs((Bench.Sum(bench.Listen(0.1).Samples[^1]) - Bench.Sum(warm)) * 0.0005 - 400), 0.002, 0.06);
    }

    [Fact]
    public void Hum_is_the_mains_and_its_second_harmonic()
    {
        using var bench = new Bench("hum", hertz: 1000);
        var samples = bench.Listen(1).Samples;
        var mains = Amplitude(samples, 50);
        Assert.InRange(mains, 0.04, 0.12);
        Assert.Equal(0.3 * mains, Amplitude(samples, 100), 0.01 * mains + 1e-4);
        Assert.True(Amplitude(samples, 73) < 0.01 * mains);
    }

    [Fact]
    public void Tilt_noise_trembles_and_tilt_offset_does_not()
    {
        using var trembling = new Bench("tilt-noise");
        Assert.InRange(Deviation(trembling.Listen(15).Samples, s => s.PitchDegrees!.Value), 0.0092, 0.0108);
        using var skew = new Bench("tilt-offset");
        skew.Do("""{"do":"pad-tilt","corner":"LF","roll_deg":0.5}""");
        var samples = skew.Listen(1).Samples;
        Assert.Equal(0, Deviation(samples, s => s.RollDegrees!.Value), 1e-12);
        Assert.InRange(Math.Abs(samples[^1].RollDegrees!.Value - 0.5), 0.001, 0.05);
    }

    [Fact]
    public void Thermometer_noise_trembles()
    {
        using var bench = new Bench("thermometer-noise");
        Assert.InRange(Deviation(bench.Listen(15).Samples, s => s.TemperatureCelsius!.Value), 0.046, 0.054);
    }

    [Fact]
    public void Clock_offset_starts_the_pads_at_different_times()
    {
        using var together = new Bench();
        using var apart = new Bench("clock-offset");
        uint First(Bench bench, Wheel wheel) => bench.Listen(0.1, wheel).Samples[0].DeviceMicroseconds;
        Assert.Equal(0u, First(together, Wheel.RR));
        Assert.Equal(4, Enum.GetValues<Wheel>().Select(w => First(apart, w) / 1000000).Distinct().Count());
    }

    [Fact]
    public void Clock_drift_makes_a_pad_sample_fast_or_slow_by_its_own_time()
    {
        using var bench = new Bench("clock-drift", hertz: 100);
        bench.Run(20);
        var drifts = Enum.GetValues<Wheel>().Select(w => 1e6 * (bench.Bay.Pad(w).Sequence / 100.0 / bench.Bay.Pad(w).NextSample - 1)).ToArray();
        Assert.All(drifts, ppm => Assert.InRange(Math.Abs(ppm), 0.5, 60.5));
        Assert.Equal(10000u, bench.Tap().Decode().Samples[^1].DeviceMicroseconds - bench.Tap().Decode().Samples[^2].DeviceMicroseconds);
    }

    [Fact]
    public void Latency_batches_release_bytes_every_16_ms()
    {
        using var smooth = new Bench(hertz: 1000);
        using var bursts = new Bench("latency-batches", hertz: 1000);
        smooth.Run(1.6);
        bursts.Run(1.6);
        Assert.InRange(smooth.Tap().Bursts.Count, 395, 401);
        Assert.InRange(bursts.Tap().Bursts.Count, 98, 101);
        Assert.Equal(smooth.Tap().Bytes[..50000], bursts.Tap().Bytes[..50000]);
    }

    static double Deviation(List<SampleFrame> samples, Func<SampleFrame, double> value)
    {
        var mean = samples.Average(value);
        return Math.Sqrt(samples.Sum(s => (value(s) - mean) * (value(s) - mean)) / (samples.Count - 1));
    }

    // Discrete Fourier sum over whole seconds, so that whole hertz do not leak.
    static double Amplitude(List<SampleFrame> samples, double hertz)
    {
        double cosine = 0, sine = 0;
        for (var i = 0; i < 1000; i++)
        {
            var kg = Bench.Sum(samples[i]) * 0.0005;
            cosine += kg * Math.Cos(Math.Tau * hertz * i / 1000);
            sine += kg * Math.Sin(Math.Tau * hertz * i / 1000);
        }

        return 2 * Math.Sqrt(cosine * cosine + sine * sine) / 1000;
    }
}
