
namespace ScaleLink.Client.Json;

/// <summary>The word for live, held and absent.</summary>
internal static class StateWord
{
    public static string Of(Freshness freshness) => freshness switch
    {
        Freshness.Live => "live",
        Freshness.Held => "held",
        _ => "absent",
    };
}
