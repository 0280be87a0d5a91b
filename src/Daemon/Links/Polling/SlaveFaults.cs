using ScaleLink.Daemon.Pipeline;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Daemon.Links.Polling;

/// <summary>What can be wrong with one slave, in words and codes; remembers what has been told so that its end is told too.</summary>
internal sealed class SlaveFaults(byte slave, IPadSink sink)
{
    private const string Silent = "SL-211";
    private const string Refusing = "SL-212";
    private const string Late = "SL-213";
    private const string Twice = "SL-214";
    private const string OtherLength = "SL-215";

    private readonly HashSet<string> _told = [];

    public void FellSilent() => Tell(Silent, "does not answer", "Check its address, power, baud rate and parity, and A and B of the cable.", stops: true);

    public void Refused(ModbusException code, RegisterBlock block) => Tell(
        Refusing,
        $"refuses {Describe(block)} with exception {(byte)code}: {ModbusExceptionMeaning.Of(code)}",
        ModbusExceptionMeaning.Mend(code), stops: true);

    public void AnsweredLate() => Tell(Late, "answers after its time", "Raise reply_timeout_ms, or set a shorter response delay in the device.", stops: false);

    public void AnsweredTwice() => Tell(Twice, "answers twice: two devices have its address", "Disconnect one of them and give it another address.", stops: true);

    public void GaveOtherLength(RegisterBlock block) => Tell(OtherLength, $"answers the question for {Describe(block)} with another number of them", "Check the type of the registers in the bay file; restart the device.", stops: true);

    /// <summary>It has answered well: what kept it from that is over.</summary>
    public void Answered()
    {
        if (_told.Count > 0)
            End(Silent, Refusing, OtherLength);
    }

    /// <summary>It has long been the only one to answer, and in time.</summary>
    public void AnsweredAloneAndInTime()
    {
        if (_told.Count > 0)
            End(Twice, Late);
    }

    private void Tell(string code, string what, string mend, bool stops)
    {
        _told.Add(code);
        sink.OnTrouble(code, $"Slave {slave} {what}.", mend, stops);
    }

    private void End(params ReadOnlySpan<string> codes)
    {
        foreach (var code in codes)
            if (_told.Remove(code))
                sink.OnTroubleOver(code);
    }

    private static string Describe(RegisterBlock block) =>
        $"{(block.Function == ModbusFunction.ReadInputRegisters ? "input" : "holding")} registers {block.Address} to {block.Address + block.Count - 1}";
}
