using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.InclinometerZeros;

/// <summary>Leads a person through a reversal test, one line a step: Enter reads, q leaves, and the test stays open for later.</summary>
internal sealed class InclinometerZeroGuide(Shell shell, InclinometerZeroCalls work, bool json)
{
    // The outcome alone goes to standard output when it is for a program.
    private TextWriter Ask => json ? shell.Error : shell.Out;

    /// <summary>From wherever the test stands to its end; gives the exit code.</summary>
    public async Task<int> Run(ListInclinometerZerosResponse list, CancellationToken stop)
    {
        var pad = list.Pads.Single(p => p.Corner == work.Corner);
        foreach (var line in InclinometerZeroPage.Before(list, pad))
            Say(line);
        do
        {
            if (await Step(pad, stop) is not { } next)
            {
                Say("The test stays open for half an hour: the same command goes on with it.");
                return ExitCodes.NotAchieved;
            }

            pad = next;
        }
        while (pad.Readings.Count > 0);
        shell.Write(pad, json, p => InclinometerZeroPage.Pad(p, shell.Glyphs));
        return ExitCodes.Done;
    }

    // One reading, asked for until it is taken; nothing when the person leaves.
    private async Task<PadInclinometerZero?> Step(PadInclinometerZero pad, CancellationToken stop)
    {
        Say(InclinometerZeroPage.Do(pad));
        var saidTurned = false;
        while (await Line(saidTurned ? "" : "Enter reads it, a begins anew, q leaves", stop) is { } answer && answer is not ("q" or "Q"))
        {
            try
            {
                if (answer is "a" or "A")
                {
                    pad = await work.Abandon(stop);
                    Say(InclinometerZeroPage.Do(pad));
                    continue;
                }

                var next = await work.Read(pad, saidTurned, stop);
                Say(InclinometerZeroPage.Read(next));
                return next;
            }
            catch (ClientException e) when (InclinometerCodes.Area.Holds(e.Diagnostic.Code) || e.Diagnostic.Code == PadStateCodes.NotLive)
            {
                Say($"{e.Diagnostic}");
                saidTurned = e.Diagnostic.Code == InclinometerCodes.TurnNotSeen && await Line("Was it turned by half a turn? y or n", stop) is "y" or "Y";
            }
        }

        return null;
    }

    private void Say(string line)
    {
        Ask.WriteLine(line);
        Ask.Flush();
    }

    // What was said already needs no further Enter. Nobody waits for a line after Ctrl-C.
    private async Task<string?> Line(string question, CancellationToken stop)
    {
        if (question.Length == 0)
            return "";
        Ask.Write($"{question}: ");
        Ask.Flush();
        return (await Task.Run(shell.In.ReadLine, stop).WaitAsync(stop))?.Trim();
    }
}
