using CarOnPads.Replay;
using CarOnPads.Runtime;
using ScaleLink.Protocol.Recordings;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Tests.Replay;

/// <summary>Link recordings played in virtual time.</summary>
public sealed class PlayerTests : IDisposable
{
    const long Ms = 1_000_000;

    readonly Tap _tap = new();

    public void Dispose() => _tap.Dispose();

    [Fact]
    public void Bytes_come_when_they_came()
    {
        using var player = Play("""
            protocol: text-lines

            100.000 open
            100.010 received 01
            100.020 received 02 03
            """);
        player.AdvanceTo(9 * Ms);
        Assert.Empty(_tap.Bytes);
        player.AdvanceTo(10 * Ms);
        Assert.Equal([1], _tap.Bytes);
        Assert.False(player.IsOver);
        player.AdvanceTo(50 * Ms);
        Assert.Equal([1, 2, 3], _tap.Bytes);
        Assert.True(player.IsOver);
    }

    [Fact]
    public void A_pulled_cable_comes_back_and_playing_waits_for_the_reader()
    {
        using var player = Play("""
            protocol: pad-frames

            1.000 received 01
            1.010 hang-up SL-105 gone
            1.020 open
            1.030 received 02
            """);
        player.AdvanceTo(10 * Ms);
        Assert.True(_tap.Plugged);
        player.AdvanceTo(10 * Ms + Player.OpeningNs);
        Assert.False(_tap.Plugged);
        _tap.HasReader = false;
        player.AdvanceTo(20 * Ms + Player.OpeningNs);
        Assert.True(_tap.Plugged);
        player.AdvanceTo(1000 * Ms);
        _tap.HasReader = true;
        player.AdvanceTo(1001 * Ms);
        player.AdvanceTo(1001 * Ms + Player.OpeningNs - 1);
        Assert.Equal([1], _tap.Bytes);
        player.AdvanceTo(1011 * Ms + Player.OpeningNs);
        Assert.Equal([1, 2], _tap.Bytes);
        Assert.True(player.IsOver);
    }

    [Fact]
    public void A_question_gets_what_came_behind_it_in_order_and_then_the_last_again()
    {
        var (one, two) = (Question(1), Question(2));
        using var player = Play($"""
            protocol: modbus-rtu

            0.000 sent {Digits(one)}
            0.004 received 0a
            0.005 received 0b
            0.010 sent {Digits(two)}
            0.200 sent {Digits(one)}
            0.207 received 0c
            """);
        _tap.Say(two);
        player.AdvanceTo(300 * Ms);
        Assert.Empty(_tap.Bytes);
        // A torn question and noise are no questions.
        _tap.Say(one.AsSpan(0, 5));
        _tap.Say([.. one, 9, .. one, .. one]);
        player.AdvanceTo(301 * Ms);
        player.AdvanceTo(304 * Ms);
        Assert.Empty(_tap.Bytes);
        player.AdvanceTo(305 * Ms);
        Assert.Equal([0x0A], _tap.Bytes);
        player.AdvanceTo(400 * Ms);
        Assert.Equal([0x0A, 0x0B, 0x0C, 0x0C], _tap.Bytes);
        Assert.True(player.IsOver);
    }

    [Fact]
    public void A_file_that_is_no_link_recording_is_refused()
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path, "scalelink-recording 1\n\nsoon open\n");
        var refusal = Assert.Throws<SimulatorException>(() => NamedRecording.Read(path));
        Assert.Equal("CP-108", refusal.Code);
        Assert.Contains("line 3", refusal.Message);
        File.Delete(path);
    }

    static byte[] Question(byte slave)
    {
        var frame = new byte[ModbusRequest.Length];
        new ModbusRequest(slave, ModbusFunction.ReadHoldingRegisters, 0, 2).Write(frame);
        return frame;
    }

    static string Digits(byte[] bytes) => string.Join(' ', bytes.Select(b => $"{b:x2}"));

    Player Play(string text) => new([new NamedRecording("LF", LinkRecording.Parse("scalelink-recording 1\n" + text))], _ => _tap);
}
