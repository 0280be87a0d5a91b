using ScaleLink.Probing.Loading;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Search;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Probing.Listening;

/// <summary>Asks the slaves of one port in turn for the registers that they gave when they were found, and reads these in every form.</summary>
internal sealed class SlaveNumbers(ProbedPort port, IReadOnlyList<FoundSlave> slaves, TimeProvider time)
{
    // Ten questions a second to each: neighbours on a slow line still get their turn.
    private static readonly TimeSpan Round = TimeSpan.FromMilliseconds(100);

    public void Run(Action<Found, HeardNumbers> take, CancellationToken stop)
    {
        var questions = new SlaveQuestions(port, time);
        while (!stop.IsCancellationRequested)
        {
            var began = time.GetTimestamp();
            foreach (var slave in slaves)
            {
                if (stop.IsCancellationRequested || slave.Readable is not { } readable || Ask(questions, slave.Slave, readable, stop) is not { Refusal: null } answer)
                    continue;
                var now = time.GetElapsedTime(0);
                take(slave, new HeardNumbers(now, RegisterForms.Places(answer.Registers.Length), RegisterForms.Values(answer.Registers)));
            }

            if (Round - time.GetElapsedTime(began) is { Ticks: > 0 } pause)
                stop.WaitHandle.WaitOne(pause);
        }
    }

    private static SlaveAnswer? Ask(SlaveQuestions questions, byte slave, FoundRegisters readable, CancellationToken stop) =>
        questions.Ask(new ModbusRequest(slave, readable.Table, readable.At, readable.Count), SlaveSearch.Patience, out _, stop);
}
