namespace ScaleLink.Client.Terminal;

/// <summary>What a sign on the screen means; colour follows from it.</summary>
internal enum Ink
{
    Normal,
    Faint,
    Strong,
    Good,
    Bad,
    Uncertain,
    RightFrontPair,
    LeftFrontPair,
}
