using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Search;

/// <summary>Which registers of a slave can be read, in both tables, and what moves in them.</summary>
internal sealed class RegisterSearch(SlaveQuestions questions)
{
    private const int Readings = 5;
    private static readonly TimeSpan BehindAnswer = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(150);
    private static readonly int[] Counts = [64, 32, 16, 8, 4, 2, 1];
    // Where makers begin their tables, after 0 (common practice, no published source).
    private static readonly ushort[] Starts = [0, 1, 2, 10, 100, 256, 1000, 4096];
    private static readonly ModbusFunction[] Tables = [ModbusFunction.ReadHoldingRegisters, ModbusFunction.ReadInputRegisters];

    /// <summary>Looks at one slave.</summary>
    public FoundSlave Of(byte slave, CancellationToken stop)
    {
        var longest = TimeSpan.Zero;
        FoundRegisters[] tables = [.. Tables.Select(table => Of(slave, table, ref longest, stop))];
        var within = ReplyWithin(slave, Array.Find(tables, t => t.Count > 0), longest, stop);
        return new FoundSlave(slave, tables, within) { HasTwin = HasTwin(slave, tables, stop) };
    }

    // Whoever answers behind the answer has the same address. Two that answer at the same moment garble each other and are not found here.
    private bool HasTwin(byte slave, FoundRegisters[] tables, CancellationToken stop)
    {
        if (Array.Find(tables, t => t.Count > 0) is not { } table)
            return false;
        questions.Settle(stop);
        return questions.Ask(new ModbusRequest(slave, table.Table, table.At, 1), SlaveSearch.Patience, out _, stop) is not null && questions.Hears(BehindAnswer, stop);
    }

    // Long replies take long on the line: what counts is how long a short one takes.
    private TimeSpan ReplyWithin(byte slave, FoundRegisters? table, TimeSpan longest, CancellationToken stop)
    {
        var ofOne = TimeSpan.Zero;
        if (table is not null)
            for (var k = 0; k < Readings; k++)
                _ = Ask(slave, table.Table, table.At, 1, ref ofOne, stop);
        return ofOne > TimeSpan.Zero ? ofOne : longest;
    }

    private FoundRegisters Of(byte slave, ModbusFunction table, ref TimeSpan longest, CancellationToken stop)
    {
        ModbusException? refusal = null;
        foreach (var start in Starts)
        {
            var count = Most(slave, table, start, ref refusal, ref longest, stop);
            if (count > 0)
                return new FoundRegisters(table, start, Read(slave, table, start, count, ref longest, stop), null);
            // One that does not know the table, or keeps silent, is not asked on.
            if (refusal is null or ModbusException.IllegalFunction)
                break;
        }

        return new FoundRegisters(table, 0, [], refusal);
    }

    // The usual counts downwards, then what lies between the first that is read and the last that is not.
    private int Most(byte slave, ModbusFunction table, ushort start, ref ModbusException? refusal, ref TimeSpan longest, CancellationToken stop)
    {
        var (read, refused) = (0, Counts[0] + 1);
        foreach (var count in Counts)
        {
            var answer = Ask(slave, table, start, count, ref longest, stop);
            refusal = answer?.Refusal;
            if (refusal == ModbusException.IllegalFunction)
                return 0;
            // Some keep silent where they should refuse.
            if (answer is not null && refusal is null)
            {
                read = count;
                break;
            }

            refused = count;
        }

        while (read > 0 && refused - read > 1)
        {
            var middle = (read + refused) / 2;
            if (Ask(slave, table, start, middle, ref longest, stop) is { Refusal: null })
                read = middle;
            else
                refused = middle;
        }

        return read;
    }

    private List<ushort[]> Read(byte slave, ModbusFunction table, ushort start, int count, ref TimeSpan longest, CancellationToken stop)
    {
        var readings = new List<ushort[]>();
        for (var k = 0; k < Readings; k++)
        {
            questions.LetTimePass(stop);
            if (Ask(slave, table, start, count, ref longest, stop) is { Refusal: null } answer)
                readings.Add(answer.Registers);
        }

        return readings;
    }

    // Once more, if nothing comes: a single character may have been garbled.
    private SlaveAnswer? Ask(byte slave, ModbusFunction table, ushort start, int count, ref TimeSpan longest, CancellationToken stop)
    {
        for (var attempt = 0; attempt < 2; attempt++)
        {
            if (questions.Ask(new ModbusRequest(slave, table, start, count), Patience(longest), out _, stop) is not { } answer)
                continue;
            longest = answer.Took > longest ? answer.Took : longest;
            return answer;
        }

        return null;
    }

    // Where it refuses by silence, no longer than it is known to take.
    private static TimeSpan Patience(TimeSpan longest) => longest == TimeSpan.Zero || 4 * longest > SlaveSearch.Patience ? SlaveSearch.Patience
        : 4 * longest < Shortest ? Shortest : 4 * longest;
}
