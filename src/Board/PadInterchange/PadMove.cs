using ScaleLink.Api.V1;

namespace ScaleLink.Board.PadInterchange;

/// <summary>Where one pad has to go for the next placement.</summary>
/// <param name="SerialNumber">Which pad.</param>
/// <param name="From">Where it stands; absent where no pad at any corner says that number.</param>
/// <param name="To">Where it has to stand.</param>
internal readonly record struct PadMove(string SerialNumber, Corner? From, Corner To)
{
    public bool IsThere => From == To;

    /// <summary>By the corner where the crew finds it; by its number where nobody knows.</summary>
    public string Name => $"{(From is { } from ? from.Name() : SerialNumber)} to {To.Name()}";

    /// <summary>One for each corner, in the order LF, RF, LR, RR; none when no certain placement comes next.</summary>
    public static IReadOnlyList<PadMove> Of(InterchangeView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return [.. view.Next.Zip(WireCorners.All, (pad, to) => new PadMove(pad, At(view.Present.IndexOf(pad)), to))];
    }

    private static Corner? At(int index) => index < 0 ? null : WireCorners.All[index];
}
