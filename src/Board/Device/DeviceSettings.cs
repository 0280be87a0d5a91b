
namespace ScaleLink.Board.Device;

/// <summary>What this device has chosen for itself. Remembered by its browser; the daemon knows nothing of it.</summary>
internal sealed class DeviceSettings
{
    private const string On = "on", Off = "off";

    public event Action? Changed;

    /// <summary>The themes on offer; the first follows the system.</summary>
    public static IReadOnlyList<string> Themes { get; } = ["system", "light", "dark"];

    public Unit Unit => Units.Mass;
    public Unit Length => Units.Length;
    public Units Units { get; private set; } = Units.Named(null, null);
    public string Theme { get; private set; } = Themes[0];
    public bool IsBigScreen { get; private set; }
    public bool Chimes { get; private set; }
    public bool Vibrates { get; private set; }

    /// <summary>Says the next step and the settled loads aloud.</summary>
    public bool Speaks { get; private set; }

    /// <summary>Two keys take steps: a foot switch, or the keyboard of the bay.</summary>
    public bool HasSwitch { get; private set; }

    /// <summary>Code of the key that takes the next step.</summary>
    public string NextKey { get; private set; } = "PageDown";

    /// <summary>Code of the key that takes the last turn back.</summary>
    public string UndoKey { get; private set; } = "PageUp";

    public bool StaysAwake { get; private set; }

    /// <summary>Who works at this device, as last told: stands beside every step on record.</summary>
    public string Who { get; private set; } = "";

    /// <summary>Every step stands on record under a name.</summary>
    public bool HasName => Who.Trim().Length > 0;

    public void Load()
    {
        Units = Units.Named(Browser.Read("unit"), Browser.Read("length"));
        Theme = Themes.FirstOrDefault(t => t == Browser.Read("theme"), Themes[0]);
        IsBigScreen = Browser.Read("big") == On;
        Chimes = Browser.Read("chime") == On;
        Vibrates = Browser.Read("vibrate") == On;
        Who = Browser.Read("who") ?? "";
        Speaks = Browser.Read("speak") == On;
        HasSwitch = Browser.Read("switch") == On;
        NextKey = Browser.Read("next-key") ?? NextKey;
        UndoKey = Browser.Read("undo-key") ?? UndoKey;
        StaysAwake = Browser.Read("awake") == On;
        Browser.BigScreen(IsBigScreen, byHand: false);
    }

    public void SetUnit(Unit unit) => Keep("unit", (Units = Units with { Mass = unit }).Mass.Sign);

    public void SetLength(Unit unit) => Keep("length", (Units = Units with { Length = unit }).Length.Sign);

    public void SetTheme(string theme)
    {
        Browser.Theme(theme);
        Keep("theme", Theme = theme);
    }

    public void SetBigScreen(bool isOn)
    {
        Browser.BigScreen(isOn, byHand: true);
        Keep("big", (IsBigScreen = isOn) ? On : Off);
    }

    public void SetChimes(bool isOn) => Keep("chime", (Chimes = isOn) ? On : Off);

    public void SetVibrates(bool isOn) => Keep("vibrate", (Vibrates = isOn) ? On : Off);

    public void SetSpeaks(bool isOn) => Keep("speak", (Speaks = isOn) ? On : Off);

    public void SetSwitch(bool isOn) => Keep("switch", (HasSwitch = isOn) ? On : Off);

    public void SetNextKey(string code) => Keep("next-key", NextKey = code);

    public void SetUndoKey(string code) => Keep("undo-key", UndoKey = code);

    public void SetStaysAwake(bool isOn)
    {
        Browser.Awake(isOn);
        Keep("awake", (StaysAwake = isOn) ? On : Off);
    }

    public void SetWho(string who) => Keep("who", Who = who);

    private void Keep(string key, string value)
    {
        Browser.Write(key, value);
        Changed?.Invoke();
    }
}
