using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace ScaleLink.Board.Parts;

/// <summary>Draws what is in it only when its key is another one: what nobody could read any faster costs a phone nothing in between.</summary>
public sealed class Paced : ComponentBase
{
    private static readonly TimeSpan Readable = TimeSpan.FromMilliseconds(250);

    private object? _drawn;

    /// <summary>Part of a key: another one as often as digits can be read.</summary>
    public static long Now => TimeProvider.System.GetElapsedTime(0).Ticks / Readable.Ticks;

    /// <summary>Equal to the one before: nothing is drawn.</summary>
    [Parameter, EditorRequired] public object Key { get; set; } = null!;

    /// <summary>What is drawn.</summary>
    [Parameter, EditorRequired] public RenderFragment ChildContent { get; set; } = null!;

    /// <inheritdoc/>
    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        _drawn = Key;
        builder.AddContent(0, ChildContent);
    }

    /// <inheritdoc/>
    protected override bool ShouldRender() => !Equals(_drawn, Key);
}
