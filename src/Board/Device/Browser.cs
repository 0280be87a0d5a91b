using System.Runtime.InteropServices.JavaScript;

namespace ScaleLink.Board.Device;

/// <summary>What the page asks of the browser it runs in; the other half is js/device.js and js/opening.js.</summary>
/// <remarks>Called directly: the way through JSON has to be warmed up before the first view.</remarks>
internal static partial class Browser
{
    [JSImport("globalThis.scalelink.canVibrate")]
    public static partial bool CanVibrate();

    /// <summary>What this device remembers under the key; nothing when it remembers nothing.</summary>
    [JSImport("globalThis.scalelink.read")]
    public static partial string? Read(string key);

    [JSImport("globalThis.scalelink.write")]
    public static partial void Write(string key, string value);

    [JSImport("globalThis.scalelink.theme")]
    public static partial void Theme(string name);

    [JSImport("globalThis.scalelink.bigScreen")]
    public static partial void BigScreen(bool isOn, bool byHand);

    [JSImport("globalThis.scalelink.chime")]
    public static partial void Chime();

    [JSImport("globalThis.scalelink.vibrate")]
    public static partial void Vibrate();

    [JSImport("globalThis.scalelink.canSay")]
    public static partial bool CanSay();

    /// <summary>Says it aloud; what was being said is overtaken.</summary>
    [JSImport("globalThis.scalelink.say")]
    public static partial void Say(string text);

    /// <summary>A browser keeps its screen awake only where the page is served securely, as on the machine itself.</summary>
    [JSImport("globalThis.scalelink.canStayAwake")]
    public static partial bool CanStayAwake();

    [JSImport("globalThis.scalelink.awake")]
    public static partial void Awake(bool isOn);

    /// <summary>Tells <paramref name="watcher"/> the code of each key that is pressed outside of fields; it says whether the key was its.</summary>
    [JSImport("globalThis.scalelink.watchKeys")]
    public static partial void WatchKeys([JSMarshalAs<JSType.Function<JSType.String, JSType.Boolean>>] Func<string, bool> watcher);

    /// <summary>Hands a file to the person at the browser.</summary>
    [JSImport("globalThis.scalelink.save")]
    public static partial void Save(string fileName, string mediaType, byte[] content);

    /// <summary>Tells <paramref name="watcher"/> whenever the page comes to be seen (true) or unseen (false).</summary>
    [JSImport("globalThis.scalelink.watchVisibility")]
    public static partial void WatchVisibility([JSMarshalAs<JSType.Function<JSType.Boolean>>] Action<bool> watcher);

    /// <summary>The daemon's clock as the opening page has learned it, in the words of <see cref="Age.LearnedClock"/>; nothing when it has not.</summary>
    [JSImport("globalThis.scalelink.clock")]
    public static partial string? Clock();
}
