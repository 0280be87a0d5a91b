namespace ScaleLink.Client.Terminal;

/// <summary>An answer that is typed on a screen, letter by letter.</summary>
internal sealed class TypedLine(int longest)
{
    private string _question = "";
    private string? _text;
    private bool _mayBeEmpty;

    /// <summary>Whether keys belong to it now.</summary>
    public bool IsAsked => _text is not null;

    /// <summary>What to show; nothing while nothing is asked.</summary>
    public string? Question => _text is null ? null : $"{_question} {_text}_   (Enter confirms, Esc goes back)";

    /// <summary>Begins to ask.</summary>
    /// <param name="question">With its own question mark or colon.</param>
    /// <param name="mayBeEmpty">Whether Enter alone is an answer.</param>
    public void Ask(string question, bool mayBeEmpty = false) => (_question, _text, _mayBeEmpty) = (question, "", mayBeEmpty);

    /// <summary>Takes a key; gives the answer once it is confirmed.</summary>
    public string? Type(ConsoleKeyInfo key)
    {
        if (key.Key == ConsoleKey.Escape)
        {
            _text = null;
        }
        else if (key.Key == ConsoleKey.Enter && _text is { } answer && (_mayBeEmpty || answer.Length > 0))
        {
            _text = null;
            return answer;
        }
        else if (key.Key == ConsoleKey.Backspace && _text is { Length: > 0 } text)
        {
            _text = text[..^1];
        }
        else if (!char.IsControl(key.KeyChar) && _text is { } shorter && shorter.Length < longest)
        {
            _text += key.KeyChar;
        }

        return null;
    }
}
