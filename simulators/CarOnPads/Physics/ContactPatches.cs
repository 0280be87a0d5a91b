namespace CarOnPads.Physics;

/// <summary>Where each tyre stands on its pad, m from the pad's middle: forward and left.</summary>
sealed record ContactPatches
{
    const double Spread = 0.02; // m, how well a crew places a wheel

    /// <summary>Every wheel in the middle of its pad.</summary>
    public static readonly ContactPatches Centred = new();

    /// <summary>Forward of the middle.</summary>
    public Four Forward { get; init; }
    /// <summary>Left of the middle.</summary>
    public Four Left { get; init; }

    /// <summary>After the wheels have come to stand anew: all of them, or one.</summary>
    public ContactPatches Moved(NoiseSource noise, Wheel? only = null)
    {
        var (forward, left) = (Forward, Left);
        for (var i = 0; i < 4; i++)
        {
            if (only is { } wheel && (int)wheel != i)
                continue;
            forward[i] = Spread * noise.Normal();
            left[i] = Spread * noise.Normal();
        }

        return new ContactPatches { Forward = forward, Left = left };
    }
}
