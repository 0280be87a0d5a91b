using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Search;

/// <summary>
/// Who answers at one rate and parity. Each address is waited for shortly; where something comes that is no reply, it may be the late one of an address
/// before, which is asked again with patience.
/// </summary>
internal sealed class SlaveSearch(SlaveQuestions questions, int? baud)
{
    // Most devices answer within it (common practice, no published source); who does not is found by his late reply.
    private static readonly TimeSpan Short = TimeSpan.FromMilliseconds(30);
    private static readonly TimeSpan AfterLast = TimeSpan.FromMilliseconds(300);
    private static readonly TimeSpan Long = TimeSpan.FromMilliseconds(500);
    private const int CharactersOfAnExchange = 15, BitsOfACharacter = 11;

    /// <summary>How long an address that nobody has is waited for: question and reply take their time on the line.</summary>
    public static TimeSpan Wait(int? baud) => baud is { } rate ? Short + TimeSpan.FromSeconds((double)CharactersOfAnExchange * BitsOfACharacter / rate) : Short;

    /// <summary>How long a device that is known is waited for.</summary>
    public static TimeSpan Patience => Long;

    /// <summary>The addresses that answered, in the order of asking; it ends early when <paramref name="goOn"/> says so.</summary>
    /// <param name="slaves">Whom to ask.</param>
    /// <param name="goOn">Asked before each address.</param>
    /// <param name="stop">Ends it.</param>
    public IReadOnlyList<byte> Answering(IEnumerable<byte> slaves, Func<byte, bool> goOn, CancellationToken stop)
    {
        var (found, silent) = (new List<byte>(), new Queue<byte>());
        foreach (var slave in slaves)
        {
            if (!goOn(slave))
                break;
            if (questions.Ask(First(slave), Wait(baud), out var beside, stop) is not null)
                found.Add(slave);
            else
                silent.Enqueue(slave);
            if (silent.Count > Math.Ceiling(Long / Wait(baud)))
                silent.Dequeue();
            if (beside.IsAny)
                AddLate(found, beside.Slave, silent, stop);
        }

        // Who was asked last may answer when nobody asks any more.
        if (silent.Count > 0 && questions.Hears(AfterLast, stop))
            AddLate(found, null, silent, stop);
        return found;
    }

    // By what it says of itself, or the newest of those that were asked so lately that they may still answer.
    private void AddLate(List<byte> found, byte? told, Queue<byte> silent, CancellationToken stop)
    {
        questions.Settle(stop);
        byte[] possible = told is { } one ? [one] : [.. silent.Reverse()];
        var late = Array.Find(possible, slave => questions.Ask(First(slave), Long, out _, stop) is not null);
        if (late != 0 && !found.Contains(late))
            found.Add(late);
    }

    // A slave that has no such register refuses, and so answers too.
    private static ModbusRequest First(byte slave) => new(slave, ModbusFunction.ReadHoldingRegisters, 0, 1);
}
