using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Daemon.Links.Polling;

/// <summary>What can be wrong with one slave, in words and codes; remembers what has been told so that its end is told too.</summary>
internal sealed class SlaveFaults(byte slave, IPadSink sink)
{
    private readonly HashSet<Code> _told = [];

    public void FellSilent() => Tell(PadCodes.SlaveSilent, "does not answer", "Check its address, power, baud rate and parity, and A and B of the cable.", stops: true);

    public void Refused(ModbusException code, RegisterBlock block) => Tell(
        PadCodes.SlaveRefuses,
        $"refuses {Describe(block)} with exception {(byte)code}: {ModbusExceptionMeaning.Of(code)}",
        ModbusExceptionMeaning.Remedy(code), stops: true);

    public void AnsweredLate() => Tell(PadCodes.SlaveLate, "answers after its time", "Raise reply_timeout_ms, or set a shorter response delay in the device.", stops: false);

    public void AnsweredTwice() => Tell(PadCodes.SlaveTwice, "answers twice: two devices have its address", "Disconnect one of them and give it another address.", stops: true);

    public void GaveOtherLength(RegisterBlock block) => Tell(PadCodes.ReplyLengthWrong, $"answers the question for {Describe(block)} with another number of them", "Check the type of the registers in the bay file; restart the device.", stops: true);

    /// <summary>It has answered well: what kept it from that is over.</summary>
    public void Answered()
    {
        if (_told.Count > 0)
            End(PadCodes.SlaveSilent, PadCodes.SlaveRefuses, PadCodes.ReplyLengthWrong);
    }

    /// <summary>It has long been the only one to answer, and in time.</summary>
    public void AnsweredAloneAndInTime()
    {
        if (_told.Count > 0)
            End(PadCodes.SlaveTwice, PadCodes.SlaveLate);
    }

    private void Tell(Code code, string what, string remedy, bool stops)
    {
        _told.Add(code);
        sink.OnTrouble(code, $"Slave {slave} {what}.", remedy, stops);
    }

    private void End(params ReadOnlySpan<Code> codes)
    {
        foreach (var code in codes)
            if (_told.Remove(code))
                sink.OnTroubleOver(code);
    }

    private static string Describe(RegisterBlock block) =>
        $"{(block.Function == ModbusFunction.ReadInputRegisters ? "input" : "holding")} registers {block.Address} to {block.Address + block.Count - 1}";
}
