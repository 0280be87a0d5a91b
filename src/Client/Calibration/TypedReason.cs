namespace ScaleLink.Client.Calibration;

/// <summary>A reason that is typed on the page, letter by letter.</summary>
internal sealed class TypedReason
{
    private const int Longest = 60;
    private string? _text;

    public bool IsAsked => _text is not null;

    /// <summary>What to show; nothing while nothing is asked.</summary>
    public string? Question => _text is null ? null : $"Why is it rejected? {_text}_   (Enter confirms, Esc goes back)";

    public void Ask() => _text = "";

    /// <summary>Takes a key; gives the reason once it is confirmed.</summary>
    public string? Type(ConsoleKeyInfo key)
    {
        if (key.Key == ConsoleKey.Escape)
        {
            _text = null;
        }
        else if (key.Key == ConsoleKey.Enter && _text is { Length: > 0 } reason)
        {
            _text = null;
            return reason;
        }
        else if (key.Key == ConsoleKey.Backspace && _text is { Length: > 0 } text)
        {
            _text = text[..^1];
        }
        else if (!char.IsControl(key.KeyChar) && _text is { Length: < Longest })
        {
            _text += key.KeyChar;
        }

        return null;
    }
}
