namespace ScaleLink.Client.Terminal;

/// <summary>Dots finer than signs: two across and four down in each place, drawn as braille patterns.</summary>
internal sealed class DotGrid(int columns, int rows)
{
    public const int Across = 2;
    public const int Down = 4;
    private const char Empty = '\u2800';

    // Unicode numbers the dots of a pattern down the left side, down the right side, then the bottom pair.
    private static readonly int[,] Bits = { { 0x01, 0x02, 0x04, 0x40 }, { 0x08, 0x10, 0x20, 0x80 } };

    private readonly int[,] _patterns = new int[columns, rows];

    public void Set(int x, int y)
    {
        if (x >= 0 && y >= 0 && x < columns * Across && y < rows * Down)
            _patterns[x / Across, y / Down] |= Bits[x % Across, y % Down];
    }

    public void Draw(Canvas canvas, int column, int row, Func<int, Ink> inkOfColumn)
    {
        for (var x = 0; x < columns; x++)
            for (var y = 0; y < rows; y++)
                if (_patterns[x, y] != 0)
                    canvas.Put(column + x, row + y, (char)(Empty + _patterns[x, y]), inkOfColumn(x));
    }
}
