using Microsoft.JSInterop;

namespace ScaleLink.Board.Device;

/// <summary>What the page asks of the browser it runs in; the other half is js/device.js.</summary>
internal sealed class Browser(IJSRuntime js)
{
    private readonly IJSInProcessRuntime _js = (IJSInProcessRuntime)js;

    public bool CanVibrate => _js.Invoke<bool>("scalelink.canVibrate");

    /// <summary>What this device remembers under the key; nothing when it remembers nothing.</summary>
    public string? Read(string key) => _js.Invoke<string?>("scalelink.read", key);

    public void Write(string key, string value) => _js.InvokeVoid("scalelink.write", key, value);

    public void Theme(string name) => _js.InvokeVoid("scalelink.theme", name);

    public void BigScreen(bool isOn, bool byHand) => _js.InvokeVoid("scalelink.bigScreen", isOn, byHand);

    public void Chime() => _js.InvokeVoid("scalelink.chime");

    public void Vibrate() => _js.InvokeVoid("scalelink.vibrate");

    /// <summary>Hands a file to the person at the browser.</summary>
    public void Save(string fileName, string mediaType, byte[] content) => _js.InvokeVoid("scalelink.save", fileName, mediaType, content);

    /// <summary>Calls <c>OnVisible(bool)</c> of <paramref name="watcher"/> whenever the page comes to be seen or unseen.</summary>
    public void WatchVisibility<T>(DotNetObjectReference<T> watcher) where T : class => _js.InvokeVoid("scalelink.watchVisibility", watcher);
}
