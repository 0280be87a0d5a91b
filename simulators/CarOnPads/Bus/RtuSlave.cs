using CarOnPads.Pads;
using CarOnPads.Physics;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Bus;

/// <summary>One device on the bus: answers questions after a moment, and can be broken in many ways.</summary>
sealed class RtuSlave(byte address, Pad pad, bool isInclinometer, Wire wire, NoiseSource chance)
{
    // Response time of a middling transmitter, s (common practice, no published source).
    const double ResponseSeconds = 0.003;
    const double BehindStranger = 0.02;

    readonly PriorityQueue<byte[], (double At, int Order)> _answers = new();
    int _order;

    public byte Address => address;

    /// <summary>Hears a question that is meant for it.</summary>
    public void Ask(ReadOnlySpan<byte> frame, double now)
    {
        if (!pad.Answers(now) || (isInclinometer ? pad.LastTrue : pad.LastSaid) is not { } sample)
            return;
        var registers = isInclinometer ? SlaveRegisters.OfTilt(sample) : SlaveRegisters.OfPad(sample);
        var reply = Reply(frame, registers);
        if (chance.Uniform(0, 1) < pad.Faults.WrongCheckShare)
            reply[^1] ^= 0x10;
        Queue(reply, now + ResponseSeconds + (pad.Faults.TwinFirst ? BehindStranger : 0));
        // A stranger with the same address is a little slower, or much quicker, and carries something else.
        if (pad.Faults.Twin)
            Queue(Reply(frame, [.. registers.Select(r => (ushort)(r ^ 0x0A5))]), now + ResponseSeconds + (pad.Faults.TwinFirst ? 0 : 0.001));
    }

    /// <summary>Hands on what is due.</summary>
    public void Release(double now, Action<ReadOnlySpan<byte>> host)
    {
        while (_answers.TryPeek(out _, out var due) && due.At <= now)
            wire.Send(_answers.Dequeue(), now);
        wire.Release(now, host);
    }

    byte[] Reply(ReadOnlySpan<byte> frame, ushort[] registers)
    {
        var function = (ModbusFunction)frame[1];
        var reply = new byte[ModbusReplyWriter.MaxLength];
        if (pad.Faults.Exception is var code && code != 0)
            return Refuse(function, (ModbusException)code, reply);
        if (!ModbusRequest.TryParse(frame, out var question))
            return Refuse(function, ModbusException.IllegalFunction, reply);
        if (question.Address + question.Count > registers.Length)
            return Refuse(function, ModbusException.IllegalDataAddress, reply);
        return reply[..ModbusReplyWriter.WriteRegisters(address, function, registers.AsSpan(question.Address, question.Count), reply)];
    }

    byte[] Refuse(ModbusFunction function, ModbusException code, byte[] reply) =>
        reply[..ModbusReplyWriter.WriteException(address, function, code, reply)];

    void Queue(byte[] reply, double at) => _answers.Enqueue(reply, (at, _order++));
}
