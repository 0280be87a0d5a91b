using ScaleLink.Protocol.Modbus;

namespace Daemon.Tests.Links.Polling;

/// <summary>Several slaves on one line: rates, and that the trouble of one stays its own. Limits: the project's own requirement.</summary>
public class ModbusConversationTests
{
    private const long Ms = VirtualLine.Ms;

    [Theory]
    [InlineData(1, 50)]
    [InlineData(4, 20)]
    public void Every_slave_is_read_at_its_rate(int slaves, double hz)
    {
        var line = new VirtualLine(Enumerable.Range(1, slaves).Select(k => (byte)k), hz);
        line.Run(10);
        for (byte slave = 1; slave <= slaves; slave++)
        {
            Assert.Equal(10 * hz, line[slave].Samples.Count, 2.0);
            Assert.All(line[slave].Samples, s => Assert.Equal((1, 7, null), (s.Cells, s.Counts[0], s.DeviceMicroseconds)));
            Assert.Equal($"/dev/line slave {slave}", Assert.Single(line[slave].Identities).SerialNumber);
            Assert.Empty(line[slave].Told);
        }
    }

    [Fact]
    public void A_silent_slave_is_named_and_costs_the_others_no_more_than_its_timeout()
    {
        var line = new VirtualLine([1, 2, 3, 4]);
        line.Run(2);
        var from = line.NowNs;
        line.Answer = (question, now) => question.Slave == 2 ? [] : [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(0.75);
        Assert.Contains("Slave 2 does not answer", line[2].Troubles["SL-211"]);
        line.Run(10);
        // The period, the timeout of the silent one, and one turn of the line.
        foreach (byte slave in new byte[] { 1, 3, 4 })
        {
            Assert.InRange(line.LongestGapMs(slave, from), 0, 50 + 100 + 4 * 10);
            Assert.Empty(line[slave].Told);
            Assert.InRange(line[slave].Samples.Count(s => s.ArrivalNs >= from) / 10.75, 18, 20.5);
        }

        line.Answer = (question, now) => [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(1.2);
        Assert.Empty(line[2].Troubles);
        // One period held, and the one that has just begun.
        Assert.InRange((line.NowNs - line[2].Samples[^1].ArrivalNs) / Ms, 0, 110);
    }

    [Fact]
    public void A_refusal_is_told_with_its_meaning_and_its_end()
    {
        var line = new VirtualLine([1, 2]);
        line.Answer = (question, now) => [(now + 4 * Ms, question.Slave == 1 ? VirtualLine.Refusal(question, ModbusException.IllegalDataAddress) : VirtualLine.Registers(question, 7))];
        line.Run(1);
        Assert.Equal("Slave 1 refuses holding registers 0 to 1 with exception 2: it has no such register.", line[1].Troubles["SL-212"]);
        Assert.Equal(20, line[2].Samples.Count, 1.0);
        line.Answer = (question, now) => [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(0.5);
        Assert.Empty(line[1].Troubles);
        Assert.NotEmpty(line[1].Samples);
    }

    [Fact]
    public void Two_slaves_with_one_address_are_found_out_before_a_wrong_load_is_handed_on()
    {
        var line = new VirtualLine([1, 2]);
        line.Run(1);
        // The stranger is now quicker, now slower, by up to the gap that the line is given.
        line.Answer = (question, now) => question.Slave == 2
            ? [(now + 4 * Ms, VirtualLine.Registers(question, 7))]
            : [(now + 4 * Ms, VirtualLine.Registers(question, 7)), (now + (line.Asked.Count % 5 + 1) * Ms, VirtualLine.Registers(question, 999))];
        line.Run(5);
        Assert.Contains("two devices have its address", line[1].Troubles["SL-214"]);
        Assert.DoesNotContain(line[1].Samples, s => s.ArrivalNs > 1010 * Ms);
        Assert.Equal(120, line[2].Samples.Count, 3.0);
        line.Answer = (question, now) => [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(2.5);
        Assert.Empty(line[1].Troubles);
        Assert.All(line[1].Samples, s => Assert.Equal(7, s.Counts[0]));
        Assert.Contains(line[1].Samples, s => s.ArrivalNs > 7000 * Ms);
    }

    // A machine that was held up answers everything at once afterwards: the answers are many, the devices are not.
    [Fact]
    public void A_line_that_stood_still_is_not_taken_for_two_devices()
    {
        var line = new VirtualLine([1, 2], pollHz: 30, timeoutMs: 60);
        var random = new Random(7);
        var (stallFrom, stallTo) = (0L, 0L);
        line.Answer = (question, now) =>
        {
            if (now > stallTo + 2000 * Ms)
                (stallFrom, stallTo) = (now, now + random.Next(50, 600) * Ms);
            var at = now >= stallFrom && now < stallTo ? stallTo + line.Asked.Count % 7 * Ms : now;
            return [(at + 4 * Ms, VirtualLine.Registers(question, 7))];
        };
        line.Run(120);
        Assert.DoesNotContain("SL-214", line[1].Told.Concat(line[2].Told));
        Assert.InRange(line[1].Samples.Count, 2000, 3600);
    }

    [Fact]
    public void A_stranger_s_whole_answer_behind_a_damaged_one_is_not_believed()
    {
        var line = new VirtualLine([1]);
        line.Answer = (question, now) =>
        {
            var damaged = VirtualLine.Registers(question, 7);
            damaged[4] ^= 0x20;
            return [(now + 4 * Ms, [.. damaged, .. VirtualLine.Registers(question, 999)])];
        };
        line.Run(2);
        Assert.Empty(line[1].Samples);
        Assert.True(line[1].Counters().BadFrames > 20);
    }

    // The stranger answers first, and its answer looks right; the one who was meant is so much later.
    [Theory]
    [InlineData(1, 5)]
    [InlineData(1, 20)]
    [InlineData(1, 44)]
    [InlineData(4, 5)]
    [InlineData(4, 20)]
    [InlineData(4, 44)]
    public void A_stranger_who_answers_first_is_found_out_before_anything_of_it_is_handed_on(int slaves, int laterMs)
    {
        var line = new VirtualLine(Enumerable.Range(1, slaves).Select(k => (byte)k));
        line.Answer = (question, now) => question.Slave == 1
            ? [(now + 3 * Ms, VirtualLine.Registers(question, 99)), (now + (3 + laterMs) * Ms, VirtualLine.Registers(question, 7))]
            : [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(10);
        Assert.Empty(line[1].Samples);
        Assert.Contains("SL-214", line[1].Told);
        // It comes in the middle of a run too.
        line.Answer = (question, now) => [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(10);
        var good = line[1].Samples.Count;
        Assert.NotEqual(0, good);
        line.Answer = (question, now) => question.Slave == 1
            ? [(now + 3 * Ms, VirtualLine.Registers(question, 99)), (now + (3 + laterMs) * Ms, VirtualLine.Registers(question, 7))]
            : [(now + 4 * Ms, VirtualLine.Registers(question, 7))];
        line.Run(10);
        Assert.DoesNotContain(line[1].Samples, s => s.Counts[0] == 99);
    }

    // The garbage of one slave falls into the time of the next, whose own answer then seems to come twice.
    [Fact]
    public void Late_garbage_of_one_slave_does_not_make_another_a_liar()
    {
        var line = new VirtualLine([1, 2]);
        line.Answer = (question, now) =>
        {
            var reply = VirtualLine.Registers(question, 7);
            if (question.Slave == 2)
                return [(now + 4 * Ms, reply)];
            reply[^1] ^= 0x10;
            return [(now + 101 * Ms, reply)];
        };
        line.Run(10);
        Assert.DoesNotContain("SL-214", line[2].Told);
        Assert.InRange(line.LongestGapMs(2, 0), 50, 250);
        Assert.All(line[2].Samples, s => Assert.Equal(7, s.Counts[0]));
    }

    [Fact]
    public void An_answer_after_its_time_is_not_taken_for_the_next_one_s()
    {
        var map = new RegisterMap([VirtualLine.Load(0, 0), VirtualLine.Load(100, 1)]);
        var line = new VirtualLine([1], map: map);
        var count = 0;
        // Every eleventh answer comes up to two and a half timeouts after its question; the two blocks look alike on the wire.
        line.Answer = (question, now) => [(now + (++count % 11 == 0 ? 110 + count % 7 * 23 : 4) * Ms, VirtualLine.Registers(question, question.Address == 0 ? 5 : 6))];
        line.Run(20);
        Assert.NotEmpty(line[1].Samples);
        Assert.All(line[1].Samples, s => Assert.Equal((2, 5, 6), (s.Cells, s.Counts[0], s.Counts[1])));
        Assert.Contains("SL-213", line[1].Told);
        Assert.DoesNotContain("SL-214", line[1].Told);
    }

    [Fact]
    public void Damaged_and_broken_off_answers_are_asked_for_again_at_once()
    {
        var line = new VirtualLine([1, 2]);
        var count = 0;
        line.Answer = (question, now) =>
        {
            var reply = VirtualLine.Registers(question, 7);
            if (question.Slave == 1 && ++count % 5 == 0)
                reply = count % 2 == 0 ? reply[..6] : [.. reply[..4], (byte)(reply[4] ^ 1), .. reply[5..]];
            return [(now + 4 * Ms, reply)];
        };
        line.Run(10);
        Assert.InRange(line[1].Samples.Count, 180, 202);
        Assert.InRange(line.LongestGapMs(1, 0), 50, 110);
        Assert.InRange(line[1].Counters().BadFrames, 35, 60);
        Assert.Equal(0, line[2].Counters().BadFrames);
        Assert.All(line[1].Samples, s => Assert.Equal(7, s.Counts[0]));
    }

    [Fact]
    public void An_adapter_that_hears_itself_is_put_up_with_and_its_echo_alone_is_no_answer()
    {
        var line = new VirtualLine([1, 2]);
        line.Answer = (question, now) =>
        {
            var echo = new byte[ModbusRequest.Length];
            question.Write(echo);
            return question.Slave == 1 ? [(now + Ms, echo), (now + 4 * Ms, VirtualLine.Registers(question, 7))] : [(now + Ms, echo)];
        };
        line.Run(2);
        Assert.Equal(40, line[1].Samples.Count, 6.0);
        Assert.Contains("SL-211", line[2].Troubles.Keys);
        Assert.Equal(0, line[1].Counters().BadFrames + line[2].Counters().BadFrames);
    }

    [Fact]
    public void Another_number_of_registers_is_named()
    {
        var line = new VirtualLine([1]);
        line.Answer = (question, now) => [(now + 4 * Ms, VirtualLine.Registers(new ModbusRequest(1, question.Function, 0, 4), 7))];
        line.Run(1);
        Assert.Contains("SL-215", line[1].Troubles.Keys);
        Assert.Empty(line[1].Samples);
    }

    [Fact]
    public void Nobody_is_ever_broadcast_to() =>
        Assert.All(Ask([1, 247]), asked => Assert.InRange(asked.Question.Slave, 1, 247));

    private static List<(long AtNs, ModbusRequest Question)> Ask(byte[] slaves)
    {
        var line = new VirtualLine(slaves);
        line.Run(1);
        return line.Asked;
    }
}
