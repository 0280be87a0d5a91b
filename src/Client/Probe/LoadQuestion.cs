using System.Globalization;
using ScaleLink.Client.Runtime;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Client.Probe;

/// <summary>Asks whoever sits at the terminal which number of a line is the load. Without a terminal the likeliest stays, and the block says which others there are.</summary>
internal sealed class LoadQuestion(Shell shell)
{
    /// <summary>The finding with the number that was chosen.</summary>
    /// <param name="finding">A port.</param>
    /// <param name="show">Shows it before the question.</param>
    public PortFinding Ask(PortFinding finding, Action show)
    {
        show();
        return shell.HasTyping ? finding with { Found = [.. finding.Found.Select(f => f is FoundText { IsToBeAsked: true } text ? Ask(text) : f)] } : finding;
    }

    private FoundText Ask(FoundText text)
    {
        while (true)
        {
            shell.Out.Write($"Which number is the load: {string.Join(", ", text.Others.Keys.Append(text.Load).Order())}? Enter alone: {text.Load}, because {text.Why}. ");
            shell.Out.Flush();
            if (shell.In.ReadLine()?.Trim() is not { Length: > 0 } answer)
                return text;
            if (int.TryParse(answer, NumberStyles.None, CultureInfo.InvariantCulture, out var position) && text.Taking(position) is { } taken)
                return taken;
            shell.WriteLine("  One of these numbers is needed.");
        }
    }
}
