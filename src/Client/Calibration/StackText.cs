using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>Loads as people write them: "20 A + 20 B", with ballast "20 A on ballast 1 + ballast 2".</summary>
internal static class StackText
{
    private const int LongestLabel = 40;

    /// <summary>A load of the command line.</summary>
    /// <exception cref="ClientException">SL-449: nothing stands in it.</exception>
    public static LoadStack Parse(string text)
    {
        var parts = text.Split(" on ", 2);
        var stack = new LoadStack();
        stack.Masses.AddRange(Labels(parts[0]));
        stack.Ballast.AddRange(parts.Length > 1 ? Labels(parts[1]) : []);
        return stack.Masses.Count + stack.Ballast.Count > 0
            ? stack
            : throw new ClientException(new Diagnostic(ClientCodes.LoadWithoutLabels, $"\"{PeerText.Clean(text, LongestLabel)}\" is no load.", "Write the labels of the masses with + between them: \"20 A + 20 B\"."));
    }

    /// <summary>A load of the daemon, cleaned.</summary>
    public static string Of(LoadStack? stack) => stack is null || stack.Masses.Count + stack.Ballast.Count == 0
        ? "empty pad"
        : PeerText.Clean(string.Join(" + ", stack.Masses) + (stack.Ballast.Count > 0 ? $" on {string.Join(" + ", stack.Ballast)}" : ""), 200).Trim();

    private static string[] Labels(string text) => text.Split('+', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
