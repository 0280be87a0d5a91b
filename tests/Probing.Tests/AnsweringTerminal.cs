using System.Runtime.Versioning;
using CarOnPads.Ports;
using ScaleLink.Protocol.Modbus;

namespace Probing.Tests;

/// <summary>A pseudo-terminal behind which Modbus slaves answer, each in its own way.</summary>
[UnsupportedOSPlatform("windows")]
internal sealed class AnsweringTerminal : IDisposable
{
    private readonly PseudoTerminal _terminal = new();
    private readonly CancellationTokenSource _over = new();
    private readonly Task _answering;
    private readonly Dictionary<byte, Device> _devices;

    public AnsweringTerminal(params Device[] devices)
    {
        _devices = devices.ToDictionary(d => d.Slave);
        _answering = Task.Run(Answer);
    }

    /// <summary>A device of that address.</summary>
    public sealed record Device(byte Slave)
    {
        public TimeSpan After { get; init; } = TimeSpan.FromMilliseconds(3);
        public ushort At { get; init; }
        public int Registers { get; init; } = 10;
        public bool HasInput { get; init; } = true;
        /// <summary>A second device answers a little later.</summary>
        public bool HasTwin { get; init; }
        /// <summary>Says nothing where others refuse.</summary>
        public bool IsSilentOnRefusal { get; init; }
    }

    public string Path => _terminal.SlavePath;

    /// <summary>The adapter hears what the host sends.</summary>
    public bool Echoes { get; init; }

    public void Dispose()
    {
        _over.Cancel();
        _answering.GetAwaiter().GetResult();
        _over.Dispose();
        _terminal.Dispose();
    }

    private async Task Answer()
    {
        var (heard, buffer, reading) = (new List<byte>(), new byte[256], 0);
        var due = new List<(long At, byte[] Bytes)>();
        while (!_over.IsCancellationRequested)
        {
            var read = _terminal.Read(buffer);
            heard.AddRange(buffer.AsSpan(0, read));
            if (Echoes && read > 0)
                _terminal.Write(buffer.AsSpan(0, read));
            while (heard.Count >= ModbusRequest.Length)
            {
                var isQuestion = ModbusRequest.TryParse(heard.GetRange(0, ModbusRequest.Length).ToArray(), out var question);
                heard.RemoveRange(0, isQuestion ? ModbusRequest.Length : 1);
                if (isQuestion && _devices.TryGetValue(question.Slave, out var device) && Reply(device, question, ++reading) is { } reply)
                    due.AddRange(from after in device.HasTwin ? [device.After, 4 * device.After] : new[] { device.After } select (TimeProvider.System.GetTimestamp() + (long)(after.TotalSeconds * TimeProvider.System.TimestampFrequency), reply));
            }

            foreach (var ready in due.Where(d => d.At <= TimeProvider.System.GetTimestamp()).ToList())
            {
                _terminal.Write(ready.Bytes);
                due.Remove(ready);
            }

            await Task.Delay(1, CancellationToken.None);
        }
    }

    // The first two registers are a number of 32 bits whose last digits never stand still; the others stand.
    private static byte[]? Reply(Device device, in ModbusRequest question, int reading)
    {
        var reply = new byte[ModbusReplyWriter.MaxLength];
        var refusal = question.Function == ModbusFunction.ReadInputRegisters && !device.HasInput ? ModbusException.IllegalFunction
            : question.Address < device.At || question.Address + question.Count > device.At + device.Registers ? ModbusException.IllegalDataAddress
            : (ModbusException?)null;
        if (refusal is { } why)
            return device.IsSilentOnRefusal ? null : reply[..ModbusReplyWriter.WriteException(device.Slave, question.Function, why, reply)];
        var at = question.Address - device.At;
        ushort[] all = [2, (ushort)(40_000 + reading % 7), .. Enumerable.Repeat((ushort)7, device.Registers)];
        return reply[..ModbusReplyWriter.WriteRegisters(device.Slave, question.Function, all.AsSpan(at, question.Count), reply)];
    }
}
