namespace ScaleLink.Client.Terminal;

/// <summary>Signs five rows high, to be read from under the car.</summary>
internal static class BigText
{
    public const int Rows = 5;
    private const int ColumnsPerDot = 2;
    private const int Gap = 2;

    // Five rows of three dots, a row an octal digit: 4 left, 2 middle, 1 right.
    private static readonly Dictionary<char, string> Shapes = new()
    {
        ['0'] = "75557", ['1'] = "26227", ['2'] = "71747", ['3'] = "71717", ['4'] = "55711",
        ['5'] = "74717", ['6'] = "74757", ['7'] = "71122", ['8'] = "75757", ['9'] = "75717",
        ['-'] = "00700", ['A'] = "25755", ['D'] = "65556", ['E'] = "74647", ['I'] = "72227", ['R'] = "65655", ['S'] = "34216",
    };

    /// <summary>Draws the text; returns the column after it. Signs without a shape are left out.</summary>
    public static int Draw(Canvas canvas, int column, int row, string text, char fill, Ink ink)
    {
        foreach (var sign in text)
        {
            if (sign == '.')
            {
                for (var i = 0; i < ColumnsPerDot; i++)
                    canvas.Put(column + i, row + Rows - 1, fill, ink);
                column += ColumnsPerDot + Gap;
            }
            else if (Shapes.TryGetValue(sign, out var shape))
            {
                DrawSign(canvas, column, row, shape, fill, ink);
                column += 3 * ColumnsPerDot + Gap;
            }
        }

        return column;
    }

    private static void DrawSign(Canvas canvas, int column, int row, ReadOnlySpan<char> shape, char fill, Ink ink)
    {
        for (var y = 0; y < Rows; y++)
            for (var x = 0; x < 3 * ColumnsPerDot; x++)
                if (((shape[y] - '0') >> (2 - x / ColumnsPerDot) & 1) == 1)
                    canvas.Put(column + x, row + y, fill, ink);
    }
}
