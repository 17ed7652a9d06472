/* stead-words.c - words and numbers that every sentence shares. */
#include "config.h"

#include "answer/stead-words.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

gulong
stead_words_plural (gint64 n)
{
  guint64 count = n < 0 ? (guint64) 0 - (guint64) n : (guint64) n;

  return (gulong) (count > 1000000 ? count % 1000000 + 1000000 : count);
}

/* A count with fractions takes the plural, but a whole 1 the singular. */
static gulong
plural_of (double count)
{
  return fabs (count - 1) < 1e-9 ? 1 : 2 + stead_words_plural ((gint64) CLAMP (fabs (count), 0, 1e15));
}

char *
stead_words_units (SteadPack pack,
                   double    count)
{
  return stead_words_units_exact (pack, count, 2);
}

char *
stead_words_units_exact (SteadPack pack,
                         double    count,
                         int       digits)
{
  gulong n = plural_of (count);
  g_autofree char *number = stead_number_format (count, digits);

  switch (pack)
    {
    case STEAD_PACK_DOZEN:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s dozen", "%s dozen", n), number);
    case STEAD_PACK_HALF_DOZEN:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s half dozen", "%s half dozens", n), number);
    case STEAD_PACK_TRAY:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s tray", "%s trays", n), number);
    case STEAD_PACK_PIECE:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s piece", "%s pieces", n), number);
    case STEAD_PACK_POUND:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s pound", "%s pounds", n), number);
    case STEAD_PACK_KILOGRAM:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s kilogram", "%s kilograms", n), number);
    case STEAD_PACK_JAR:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s jar", "%s jars", n), number);
    case STEAD_PACK_PACK:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s pack", "%s packs", n), number);
    default:
      g_return_val_if_reached (NULL);
    }
}

const char *
stead_words_per_unit (SteadPack pack)
{
  switch (pack)
    {
    /* Translators: after a price: "$4.50 a dozen". */
    case STEAD_PACK_DOZEN: return C_("after a price", "a dozen");
    case STEAD_PACK_HALF_DOZEN: return C_("after a price", "a half dozen");
    case STEAD_PACK_TRAY: return C_("after a price", "a tray");
    case STEAD_PACK_PIECE: return C_("after a price", "a piece");
    case STEAD_PACK_POUND: return C_("after a price", "a pound");
    case STEAD_PACK_KILOGRAM: return C_("after a price", "a kilogram");
    case STEAD_PACK_JAR: return C_("after a price", "a jar");
    case STEAD_PACK_PACK: return C_("after a price", "a pack");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_words_one_unit (SteadPack pack)
{
  switch (pack)
    {
    case STEAD_PACK_DOZEN: return C_("start of a sentence", "One dozen");
    case STEAD_PACK_HALF_DOZEN: return C_("start of a sentence", "One half dozen");
    case STEAD_PACK_TRAY: return C_("start of a sentence", "One tray");
    case STEAD_PACK_PIECE: return C_("start of a sentence", "One piece");
    case STEAD_PACK_POUND: return C_("start of a sentence", "One pound");
    case STEAD_PACK_KILOGRAM: return C_("start of a sentence", "One kilogram");
    case STEAD_PACK_JAR: return C_("start of a sentence", "One jar");
    case STEAD_PACK_PACK: return C_("start of a sentence", "One pack");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_words_unit_plural (SteadPack pack)
{
  switch (pack)
    {
    case STEAD_PACK_DOZEN: return C_("title of an axis", "dozens");
    case STEAD_PACK_HALF_DOZEN: return C_("title of an axis", "half dozens");
    case STEAD_PACK_TRAY: return C_("title of an axis", "trays");
    case STEAD_PACK_PIECE: return C_("title of an axis", "pieces");
    case STEAD_PACK_POUND: return C_("title of an axis", "pounds");
    case STEAD_PACK_KILOGRAM: return C_("title of an axis", "kilograms");
    case STEAD_PACK_JAR: return C_("title of an axis", "jars");
    case STEAD_PACK_PACK: return C_("title of an axis", "packs");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_words_pack_name (SteadPack pack)
{
  switch (pack)
    {
    case STEAD_PACK_DOZEN: return C_("pack", "Dozen eggs");
    case STEAD_PACK_HALF_DOZEN: return C_("pack", "Half dozen eggs");
    case STEAD_PACK_TRAY: return C_("pack", "Tray of 30 eggs");
    case STEAD_PACK_PIECE: return C_("pack", "Piece");
    case STEAD_PACK_POUND: return C_("pack", "Pound");
    case STEAD_PACK_KILOGRAM: return C_("pack", "Kilogram");
    case STEAD_PACK_JAR: return C_("pack", "Jar");
    case STEAD_PACK_PACK: return C_("pack", "Pack");
    default: g_return_val_if_reached ("");
    }
}

char *
stead_words_percent (double frac,
                     int    digits)
{
  g_autofree char *number = stead_number_format (frac * 100, digits);

  /* Translators: a number of percent, as it is written in your language. */
  return g_strdup_printf (C_("percent", "%s%%"), number);
}

char *
stead_words_chance (double frac)
{
  g_autofree char *one = stead_words_percent (0.01, 0);
  g_autofree char *most = stead_words_percent (0.99, 0);

  if (frac < 0.005)
    /* Translators: a chance: "under 1%". */
    return g_strdup_printf (_("under %s"), one);
  if (frac >= 0.995 && frac < 1)
    /* Translators: a chance: "over 99%". */
    return g_strdup_printf (_("over %s"), most);
  return stead_words_percent (frac, 0);
}

char *
stead_words_eggs (gint64 n)
{
  g_autofree char *number = stead_number_format ((double) n, 0);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s egg", "%s eggs", stead_words_plural (n)), number);
}

char *
stead_words_hens (gint64 n)
{
  g_autofree char *number = stead_number_format ((double) n, 0);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s hen", "%s hens", stead_words_plural (n)), number);
}

char *
stead_words_fish (gint64 n)
{
  g_autofree char *number = stead_number_format ((double) n, 0);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s fish", "%s fish", stead_words_plural (n)), number);
}

char *
stead_words_birds (gint64 n)
{
  g_autofree char *number = stead_number_format ((double) n, 0);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s bird", "%s birds", stead_words_plural (n)), number);
}

char *
stead_words_flock (SteadSpecies species,
                   gint64       n)
{
  return species == STEAD_SPECIES_HEN ? stead_words_hens (n) : stead_words_birds (n);
}

char *
stead_words_days (gint64 n)
{
  g_autofree char *number = stead_number_format ((double) n, 0);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s day", "%s days", stead_words_plural (n)), number);
}

/* Writes the character that @entity ("amp", "#39") stands for. */
static void
append_entity (GString    *text,
               const char *entity,
               gsize       length)
{
  static const struct { const char *name; char character; } known[] = {
    { "amp", '&' }, { "lt", '<' }, { "gt", '>' }, { "quot", '"' }, { "apos", '\'' },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    if (strlen (known[i].name) == length && strncmp (known[i].name, entity, length) == 0)
      {
        g_string_append_c (text, known[i].character);
        return;
      }
  if (length > 1 && entity[0] == '#')
    {
      gboolean hex = entity[1] == 'x';
      guint64 code = g_ascii_strtoull (entity + (hex ? 2 : 1), NULL, hex ? 16 : 10);

      if (g_unichar_validate ((gunichar) code) && code != 0)
        g_string_append_unichar (text, (gunichar) code);
    }
}

char *
stead_words_plain (const char *markup)
{
  GString *text;

  g_return_val_if_fail (markup != NULL, NULL);

  text = g_string_sized_new (strlen (markup));
  for (const char *at = markup; *at != '\0'; at++)
    {
      const char *end = *at == '<' ? strchr (at, '>') : *at == '&' ? strchr (at, ';') : NULL;

      if (end == NULL)
        {
          g_string_append_c (text, *at);
          continue;
        }
      if (*at == '&')
        append_entity (text, at + 1, (gsize) (end - at - 1));
      at = end;
    }
  return g_string_free (text, FALSE);
}

void
stead_words_add (GString    *text,
                 const char *sentence)
{
  if (sentence == NULL || sentence[0] == '\0')
    return;
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
}

char *
stead_words_end (GString *text)
{
  gboolean empty = text->len == 0;
  char *sentences = g_string_free (text, empty);

  return empty ? NULL : sentences;
}

char *
stead_words_feed_lasts (double on_hand_kg,
                        double days)
{
  gint64 whole;
  g_autofree char *text = NULL;

  if (!(on_hand_kg > 1e-6))
    return g_strdup (_("No feed is on hand."));
  if (isnan (days))
    return NULL;
  whole = (gint64) floor (MIN (days, 36500) + 1e-9);
  if (whole < 1)
    return g_strdup (_("Feed runs out <b>today</b>."));
  if (whole > 365)
    return g_strdup (_("Feed lasts <b>more than a year</b>."));
  text = stead_words_days (whole);
  /* Translators: "9 days". */
  return g_strdup_printf (_("Feed lasts <b>%s</b>."), text);
}

char *
stead_words_list (const char * const *names)
{
  guint n = names == NULL ? 0 : g_strv_length ((char **) names);
  g_autofree char *first = NULL;

  if (n == 0)
    return g_strdup ("");
  if (n == 1)
    return g_strdup (names[0]);
  first = g_strdup (names[0]);
  for (guint i = 1; i + 1 < n; i++)
    {
      /* Translators: more names follow: "Carton, Label, …". */
      char *longer = g_strdup_printf (C_("list of names", "%s, %s"), first, names[i]);

      g_free (first);
      first = longer;
    }
  /* Translators: the last two of a list of names. */
  return g_strdup_printf (C_("list of names", "%s and %s"), first, names[n - 1]);
}

char *
stead_words_number (double value)
{
  double size = fabs (value);

  return stead_number_format (value, size >= 100 ? 0 : size >= 10 ? 1 : 2);
}

SteadWhy *
stead_why_new (char       *title,
               const char *formula,
               char       *worked,
               const char *source)
{
  SteadWhy *why = g_new0 (SteadWhy, 1);

  why->title = title;
  why->formula = g_strdup (formula);
  why->worked = worked;
  why->source = g_strdup (source);
  return why;
}

SteadWhy *
stead_why_copy (const SteadWhy *why)
{
  if (why == NULL)
    return NULL;
  return stead_why_new (g_strdup (why->title), why->formula, g_strdup (why->worked), why->source);
}

void
stead_whys_add (GPtrArray *whys,
                SteadWhy  *why)
{
  if (why != NULL)
    g_ptr_array_add (whys, why);
}

GPtrArray *
stead_whys_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) stead_why_free);
}

void
stead_why_free (SteadWhy *why)
{
  if (why == NULL)
    return;
  g_free (why->title);
  g_free (why->formula);
  g_free (why->worked);
  g_free (why->source);
  g_free (why);
}
