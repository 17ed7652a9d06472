/* stead-import-columns.c - what the columns of a stranger's table mean. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-import-private.h"
#include "answer/stead-line-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LOG (1u << STEAD_IMPORT_FLOCK_LOG)
#define RECEIPTS (1u << STEAD_IMPORT_RECEIPTS)
#define FISH (1u << STEAD_IMPORT_FISH_LOG)
#define SCALE (1u << STEAD_IMPORT_WEIGHINGS)
#define WARMTH (1u << STEAD_IMPORT_TEMPERATURES)
#define PICKS (1u << STEAD_IMPORT_PICKS)
#define BANK (1u << STEAD_IMPORT_BANK)
#define LIST (1u << STEAD_IMPORT_PEOPLE)
#define LOGGER ((1u << STEAD_IMPORT_COOLER) | (1u << STEAD_IMPORT_POT))
#define ALL (LOG | RECEIPTS | FISH | SCALE | WARMTH | PICKS | BANK | LOGGER)

/* Names of columns, folded: lower case, without accents, signs as one space. */
static const struct { const char *name; SteadColumn column; guint kinds; } names[] = {
  { "date", STEAD_COLUMN_DATE, ALL }, { "day", STEAD_COLUMN_DATE, ALL },
  { "log date", STEAD_COLUMN_DATE, LOG | FISH }, { "purchase date", STEAD_COLUMN_DATE, RECEIPTS },
  { "bought on", STEAD_COLUMN_DATE, RECEIPTS }, { "receipt date", STEAD_COLUMN_DATE, RECEIPTS },
  { "fecha", STEAD_COLUMN_DATE, ALL }, { "dia", STEAD_COLUMN_DATE, ALL },
  { "fecha de compra", STEAD_COLUMN_DATE, RECEIPTS },

  { "date time", STEAD_COLUMN_DATE, WARMTH | LOGGER }, { "date and time", STEAD_COLUMN_DATE, WARMTH | LOGGER },
  { "timestamp", STEAD_COLUMN_DATE, WARMTH | LOGGER }, { "fecha y hora", STEAD_COLUMN_DATE, WARMTH | LOGGER },
  { "air temperature", STEAD_COLUMN_TEMPERATURE, WARMTH | LOGGER }, { "temperatura del aire", STEAD_COLUMN_TEMPERATURE, WARMTH | LOGGER },
  { "time", STEAD_COLUMN_TIME, LOGGER }, { "clock", STEAD_COLUMN_TIME, LOGGER },
  { "hora", STEAD_COLUMN_TIME, LOGGER }, { "reading", STEAD_COLUMN_TEMPERATURE, LOGGER },
  { "value", STEAD_COLUMN_TEMPERATURE, LOGGER }, { "probe", STEAD_COLUMN_TEMPERATURE, LOGGER },
  { "lectura", STEAD_COLUMN_TEMPERATURE, LOGGER }, { "valor", STEAD_COLUMN_TEMPERATURE, LOGGER },
  { "sonda", STEAD_COLUMN_TEMPERATURE, LOGGER },

  { "highest", STEAD_COLUMN_HIGHEST, WARMTH }, { "high", STEAD_COLUMN_HIGHEST, WARMTH },
  { "max", STEAD_COLUMN_HIGHEST, WARMTH }, { "maximum", STEAD_COLUMN_HIGHEST, WARMTH },
  { "tmax", STEAD_COLUMN_HIGHEST, WARMTH }, { "temp max", STEAD_COLUMN_HIGHEST, WARMTH },
  { "max temp", STEAD_COLUMN_HIGHEST, WARMTH }, { "max temperature", STEAD_COLUMN_HIGHEST, WARMTH },
  { "maxima", STEAD_COLUMN_HIGHEST, WARMTH }, { "temperatura maxima", STEAD_COLUMN_HIGHEST, WARMTH },
  { "lowest", STEAD_COLUMN_LOWEST, WARMTH }, { "low", STEAD_COLUMN_LOWEST, WARMTH },
  { "min", STEAD_COLUMN_LOWEST, WARMTH }, { "minimum", STEAD_COLUMN_LOWEST, WARMTH },
  { "tmin", STEAD_COLUMN_LOWEST, WARMTH }, { "temp min", STEAD_COLUMN_LOWEST, WARMTH },
  { "min temp", STEAD_COLUMN_LOWEST, WARMTH }, { "min temperature", STEAD_COLUMN_LOWEST, WARMTH },
  { "minima", STEAD_COLUMN_LOWEST, WARMTH }, { "temperatura minima", STEAD_COLUMN_LOWEST, WARMTH },
  { "humidity", STEAD_COLUMN_HUMIDITY, WARMTH }, { "relative humidity", STEAD_COLUMN_HUMIDITY, WARMTH },
  { "rh", STEAD_COLUMN_HUMIDITY, WARMTH }, { "humedad", STEAD_COLUMN_HUMIDITY, WARMTH },
  { "humedad relativa", STEAD_COLUMN_HUMIDITY, WARMTH },
  { "light", STEAD_COLUMN_LIGHT, WARMTH }, { "daily light", STEAD_COLUMN_LIGHT, WARMTH },
  { "dli", STEAD_COLUMN_LIGHT, WARMTH }, { "luz", STEAD_COLUMN_LIGHT, WARMTH },

  { "picked", STEAD_COLUMN_PICKED, PICKS }, { "amount", STEAD_COLUMN_PICKED, PICKS },
  { "harvest", STEAD_COLUMN_PICKED, PICKS }, { "harvested", STEAD_COLUMN_PICKED, PICKS },
  { "weight", STEAD_COLUMN_PICKED, PICKS }, { "quantity", STEAD_COLUMN_PICKED, PICKS },
  { "cosechado", STEAD_COLUMN_PICKED, PICKS }, { "cosecha", STEAD_COLUMN_PICKED, PICKS },
  { "cantidad", STEAD_COLUMN_PICKED, PICKS }, { "peso", STEAD_COLUMN_PICKED, PICKS },
  { "grade", STEAD_COLUMN_GRADE, PICKS }, { "quality", STEAD_COLUMN_GRADE, PICKS },
  { "categoria", STEAD_COLUMN_GRADE, PICKS }, { "calidad", STEAD_COLUMN_GRADE, PICKS },
  { "thrown out", STEAD_COLUMN_THROWN, PICKS }, { "lost", STEAD_COLUMN_THROWN, PICKS },
  { "loss", STEAD_COLUMN_THROWN, PICKS }, { "waste", STEAD_COLUMN_THROWN, PICKS },
  { "tirado", STEAD_COLUMN_THROWN, PICKS }, { "perdida", STEAD_COLUMN_THROWN, PICKS },
  { "descarte", STEAD_COLUMN_THROWN, PICKS },

  { "posted", STEAD_COLUMN_DATE, BANK }, { "posting date", STEAD_COLUMN_DATE, BANK },
  { "post date", STEAD_COLUMN_DATE, BANK }, { "transaction date", STEAD_COLUMN_DATE, BANK },
  { "fecha de operacion", STEAD_COLUMN_DATE, BANK },
  { "amount", STEAD_COLUMN_AMOUNT, BANK }, { "importe", STEAD_COLUMN_AMOUNT, BANK },
  { "monto", STEAD_COLUMN_AMOUNT, BANK },
  { "money in", STEAD_COLUMN_MONEY_IN, BANK }, { "paid in", STEAD_COLUMN_MONEY_IN, BANK },
  { "deposit", STEAD_COLUMN_MONEY_IN, BANK }, { "deposits", STEAD_COLUMN_MONEY_IN, BANK },
  { "credit", STEAD_COLUMN_MONEY_IN, BANK }, { "credits", STEAD_COLUMN_MONEY_IN, BANK },
  { "entrada", STEAD_COLUMN_MONEY_IN, BANK }, { "deposito", STEAD_COLUMN_MONEY_IN, BANK },
  { "depositos", STEAD_COLUMN_MONEY_IN, BANK }, { "abono", STEAD_COLUMN_MONEY_IN, BANK },
  { "money out", STEAD_COLUMN_MONEY_OUT, BANK }, { "paid out", STEAD_COLUMN_MONEY_OUT, BANK },
  { "withdrawal", STEAD_COLUMN_MONEY_OUT, BANK }, { "withdrawals", STEAD_COLUMN_MONEY_OUT, BANK },
  { "debit", STEAD_COLUMN_MONEY_OUT, BANK }, { "debits", STEAD_COLUMN_MONEY_OUT, BANK },
  { "salida", STEAD_COLUMN_MONEY_OUT, BANK }, { "retiro", STEAD_COLUMN_MONEY_OUT, BANK },
  { "retiros", STEAD_COLUMN_MONEY_OUT, BANK }, { "cargo", STEAD_COLUMN_MONEY_OUT, BANK },
  { "description", STEAD_COLUMN_TEXT, BANK }, { "details", STEAD_COLUMN_TEXT, BANK },
  { "memo", STEAD_COLUMN_TEXT, BANK }, { "payee", STEAD_COLUMN_TEXT, BANK },
  { "descripcion", STEAD_COLUMN_TEXT, BANK }, { "concepto", STEAD_COLUMN_TEXT, BANK },
  { "detalle", STEAD_COLUMN_TEXT, BANK },

  { "name", STEAD_COLUMN_PERSON, LIST }, { "full name", STEAD_COLUMN_PERSON, LIST },
  { "student name", STEAD_COLUMN_PERSON, LIST }, { "student", STEAD_COLUMN_PERSON, LIST },
  { "nombre", STEAD_COLUMN_PERSON, LIST }, { "nombre completo", STEAD_COLUMN_PERSON, LIST },
  { "estudiante", STEAD_COLUMN_PERSON, LIST }, { "person", STEAD_COLUMN_PERSON, LIST },
  { "persona", STEAD_COLUMN_PERSON, LIST },
  { "class of", STEAD_COLUMN_CLASS_YEAR, LIST }, { "class year", STEAD_COLUMN_CLASS_YEAR, LIST },
  { "class", STEAD_COLUMN_CLASS_YEAR, LIST }, { "year", STEAD_COLUMN_CLASS_YEAR, LIST },
  { "graduates", STEAD_COLUMN_CLASS_YEAR, LIST }, { "graduation year", STEAD_COLUMN_CLASS_YEAR, LIST },
  { "generacion", STEAD_COLUMN_CLASS_YEAR, LIST }, { "ano", STEAD_COLUMN_CLASS_YEAR, LIST },
  { "role", STEAD_COLUMN_ROLE, LIST }, { "rol", STEAD_COLUMN_ROLE, LIST },
  { "group", STEAD_COLUMN_GROUP, LIST }, { "list", STEAD_COLUMN_GROUP, LIST },
  { "grupo", STEAD_COLUMN_GROUP, LIST }, { "lista", STEAD_COLUMN_GROUP, LIST },

  { "eggs", STEAD_COLUMN_EGGS, LOG }, { "egg", STEAD_COLUMN_EGGS, LOG },
  { "eggs collected", STEAD_COLUMN_EGGS, LOG }, { "eggs laid", STEAD_COLUMN_EGGS, LOG },
  { "total eggs", STEAD_COLUMN_EGGS, LOG }, { "eggs total", STEAD_COLUMN_EGGS, LOG },
  { "egg count", STEAD_COLUMN_EGGS, LOG }, { "number of eggs", STEAD_COLUMN_EGGS, LOG },
  { "huevos", STEAD_COLUMN_EGGS, LOG }, { "huevos recogidos", STEAD_COLUMN_EGGS, LOG },
  { "total de huevos", STEAD_COLUMN_EGGS, LOG }, { "numero de huevos", STEAD_COLUMN_EGGS, LOG },

  { "cracked", STEAD_COLUMN_CRACKED, LOG }, { "cracked eggs", STEAD_COLUMN_CRACKED, LOG },
  { "eggs cracked", STEAD_COLUMN_CRACKED, LOG }, { "broken", STEAD_COLUMN_CRACKED, LOG },
  { "broken eggs", STEAD_COLUMN_CRACKED, LOG }, { "cracks", STEAD_COLUMN_CRACKED, LOG },
  { "rotos", STEAD_COLUMN_CRACKED, LOG }, { "huevos rotos", STEAD_COLUMN_CRACKED, LOG },
  { "quebrados", STEAD_COLUMN_CRACKED, LOG }, { "rajados", STEAD_COLUMN_CRACKED, LOG },

  { "feed", STEAD_COLUMN_FEED, LOG | FISH }, { "feed given", STEAD_COLUMN_FEED, LOG | FISH },
  { "feed used", STEAD_COLUMN_FEED, LOG | FISH }, { "food", STEAD_COLUMN_FEED, LOG | FISH },
  { "alimento", STEAD_COLUMN_FEED, LOG | FISH }, { "comida", STEAD_COLUMN_FEED, LOG | FISH },
  { "pienso", STEAD_COLUMN_FEED, LOG | FISH }, { "alimento dado", STEAD_COLUMN_FEED, LOG | FISH },

  { "deaths", STEAD_COLUMN_DEATHS, LOG | FISH }, { "dead", STEAD_COLUMN_DEATHS, LOG | FISH },
  { "died", STEAD_COLUMN_DEATHS, LOG | FISH }, { "hens dead", STEAD_COLUMN_DEATHS, LOG | FISH },
  { "dead hens", STEAD_COLUMN_DEATHS, LOG | FISH }, { "mortality", STEAD_COLUMN_DEATHS, LOG | FISH },
  { "lost", STEAD_COLUMN_DEATHS, LOG | FISH }, { "hens lost", STEAD_COLUMN_DEATHS, LOG | FISH },
  { "muertes", STEAD_COLUMN_DEATHS, LOG | FISH }, { "muertas", STEAD_COLUMN_DEATHS, LOG | FISH },
  { "gallinas muertas", STEAD_COLUMN_DEATHS, LOG | FISH }, { "mortalidad", STEAD_COLUMN_DEATHS, LOG | FISH },
  { "bajas", STEAD_COLUMN_DEATHS, LOG | FISH },

  { "culled", STEAD_COLUMN_CULLED, LOG | FISH }, { "culls", STEAD_COLUMN_CULLED, LOG | FISH },
  { "removed", STEAD_COLUMN_CULLED, LOG | FISH }, { "taken out", STEAD_COLUMN_CULLED, LOG | FISH },
  { "descartadas", STEAD_COLUMN_CULLED, LOG | FISH }, { "retiradas", STEAD_COLUMN_CULLED, LOG | FISH },

  { "reason", STEAD_COLUMN_REASON, LOG | FISH | PICKS }, { "cause", STEAD_COLUMN_REASON, LOG | FISH | PICKS },
  { "motivo", STEAD_COLUMN_REASON, LOG | FISH | PICKS }, { "causa", STEAD_COLUMN_REASON, LOG | FISH | PICKS },

  { "left out", STEAD_COLUMN_LEFT_OUT, LOG | FISH | SCALE }, { "leave out", STEAD_COLUMN_LEFT_OUT, LOG | FISH | SCALE },
  { "excluded", STEAD_COLUMN_LEFT_OUT, LOG | FISH | SCALE },
  { "excluido", STEAD_COLUMN_LEFT_OUT, LOG | FISH | SCALE }, { "excluida", STEAD_COLUMN_LEFT_OUT, LOG | FISH | SCALE },

  { "note", STEAD_COLUMN_NOTE, ALL }, { "notes", STEAD_COLUMN_NOTE, ALL },
  { "comment", STEAD_COLUMN_NOTE, ALL }, { "comments", STEAD_COLUMN_NOTE, ALL },
  { "remarks", STEAD_COLUMN_NOTE, ALL },
  { "nota", STEAD_COLUMN_NOTE, ALL }, { "notas", STEAD_COLUMN_NOTE, ALL },
  { "observaciones", STEAD_COLUMN_NOTE, ALL }, { "comentarios", STEAD_COLUMN_NOTE, ALL },

  { "by", STEAD_COLUMN_PERSON, ALL }, { "person", STEAD_COLUMN_PERSON, ALL },
  { "who", STEAD_COLUMN_PERSON, ALL }, { "student", STEAD_COLUMN_PERSON, ALL },
  { "recorded by", STEAD_COLUMN_PERSON, LOG | FISH | SCALE }, { "bought by", STEAD_COLUMN_PERSON, RECEIPTS },
  { "por", STEAD_COLUMN_PERSON, ALL }, { "persona", STEAD_COLUMN_PERSON, ALL },
  { "quien", STEAD_COLUMN_PERSON, ALL }, { "estudiante", STEAD_COLUMN_PERSON, ALL },

  { "supplier", STEAD_COLUMN_SUPPLIER, RECEIPTS }, { "store", STEAD_COLUMN_SUPPLIER, RECEIPTS },
  { "vendor", STEAD_COLUMN_SUPPLIER, RECEIPTS }, { "from", STEAD_COLUMN_SUPPLIER, RECEIPTS },
  { "shop", STEAD_COLUMN_SUPPLIER, RECEIPTS }, { "giver", STEAD_COLUMN_SUPPLIER, RECEIPTS },
  { "proveedor", STEAD_COLUMN_SUPPLIER, RECEIPTS }, { "tienda", STEAD_COLUMN_SUPPLIER, RECEIPTS },

  { "item", STEAD_COLUMN_ITEM, RECEIPTS }, { "thing", STEAD_COLUMN_ITEM, RECEIPTS },
  { "what", STEAD_COLUMN_ITEM, RECEIPTS }, { "product", STEAD_COLUMN_ITEM, RECEIPTS },
  { "description", STEAD_COLUMN_ITEM, RECEIPTS }, { "name", STEAD_COLUMN_ITEM, RECEIPTS },
  { "articulo", STEAD_COLUMN_ITEM, RECEIPTS }, { "producto", STEAD_COLUMN_ITEM, RECEIPTS },
  { "descripcion", STEAD_COLUMN_ITEM, RECEIPTS }, { "cosa", STEAD_COLUMN_ITEM, RECEIPTS },

  { "kind", STEAD_COLUMN_KIND, RECEIPTS }, { "type", STEAD_COLUMN_KIND, RECEIPTS },
  { "category", STEAD_COLUMN_KIND, RECEIPTS }, { "tipo", STEAD_COLUMN_KIND, RECEIPTS },
  { "clase", STEAD_COLUMN_KIND, RECEIPTS }, { "categoria", STEAD_COLUMN_KIND, RECEIPTS },

  { "quantity", STEAD_COLUMN_QUANTITY, RECEIPTS }, { "amount", STEAD_COLUMN_QUANTITY, RECEIPTS },
  { "qty", STEAD_COLUMN_QUANTITY, RECEIPTS }, { "how much", STEAD_COLUMN_QUANTITY, RECEIPTS },
  { "cantidad", STEAD_COLUMN_QUANTITY, RECEIPTS },

  { "unit", STEAD_COLUMN_UNIT, RECEIPTS }, { "units", STEAD_COLUMN_UNIT, RECEIPTS },
  { "unidad", STEAD_COLUMN_UNIT, RECEIPTS },

  { "cost", STEAD_COLUMN_COST, RECEIPTS }, { "total", STEAD_COLUMN_COST, RECEIPTS },
  { "price", STEAD_COLUMN_COST, RECEIPTS }, { "total cost", STEAD_COLUMN_COST, RECEIPTS },
  { "paid", STEAD_COLUMN_COST, RECEIPTS }, { "value", STEAD_COLUMN_COST, RECEIPTS },
  { "costo", STEAD_COLUMN_COST, RECEIPTS }, { "coste", STEAD_COLUMN_COST, RECEIPTS },
  { "precio", STEAD_COLUMN_COST, RECEIPTS }, { "valor", STEAD_COLUMN_COST, RECEIPTS },

  { "gift", STEAD_COLUMN_GIFT, RECEIPTS }, { "donation", STEAD_COLUMN_GIFT, RECEIPTS },
  { "donated", STEAD_COLUMN_GIFT, RECEIPTS },
  { "regalo", STEAD_COLUMN_GIFT, RECEIPTS }, { "donacion", STEAD_COLUMN_GIFT, RECEIPTS },
  { "donado", STEAD_COLUMN_GIFT, RECEIPTS },

  { "best by", STEAD_COLUMN_BEST_BY, RECEIPTS }, { "best before", STEAD_COLUMN_BEST_BY, RECEIPTS },
  { "use by", STEAD_COLUMN_BEST_BY, RECEIPTS }, { "expires", STEAD_COLUMN_BEST_BY, RECEIPTS },
  { "expiry", STEAD_COLUMN_BEST_BY, RECEIPTS },
  { "caducidad", STEAD_COLUMN_BEST_BY, RECEIPTS }, { "vence", STEAD_COLUMN_BEST_BY, RECEIPTS },
  { "consumir antes de", STEAD_COLUMN_BEST_BY, RECEIPTS },

  { "reference", STEAD_COLUMN_REFERENCE, RECEIPTS }, { "receipt", STEAD_COLUMN_REFERENCE, RECEIPTS },
  { "receipt number", STEAD_COLUMN_REFERENCE, RECEIPTS }, { "invoice", STEAD_COLUMN_REFERENCE, RECEIPTS },
  { "ref", STEAD_COLUMN_REFERENCE, RECEIPTS }, { "number", STEAD_COLUMN_REFERENCE, RECEIPTS },
  { "referencia", STEAD_COLUMN_REFERENCE, RECEIPTS }, { "recibo", STEAD_COLUMN_REFERENCE, RECEIPTS },
  { "factura", STEAD_COLUMN_REFERENCE, RECEIPTS },

  { "fish dead", STEAD_COLUMN_DEATHS, FISH }, { "dead fish", STEAD_COLUMN_DEATHS, FISH },
  { "fish lost", STEAD_COLUMN_DEATHS, FISH }, { "muertos", STEAD_COLUMN_DEATHS, FISH },
  { "peces muertos", STEAD_COLUMN_DEATHS, FISH }, { "retirados", STEAD_COLUMN_CULLED, FISH },
  { "sacados", STEAD_COLUMN_CULLED, FISH },

  { "temperature", STEAD_COLUMN_TEMPERATURE, FISH | WARMTH | LOGGER }, { "water temperature", STEAD_COLUMN_TEMPERATURE, FISH },
  { "temp", STEAD_COLUMN_TEMPERATURE, FISH | WARMTH | LOGGER }, { "water temp", STEAD_COLUMN_TEMPERATURE, FISH },
  { "water", STEAD_COLUMN_TEMPERATURE, FISH }, { "temperatura", STEAD_COLUMN_TEMPERATURE, FISH | WARMTH | LOGGER },
  { "temperatura del agua", STEAD_COLUMN_TEMPERATURE, FISH }, { "agua", STEAD_COLUMN_TEMPERATURE, FISH },

  { "feed left", STEAD_COLUMN_REFUSED, FISH }, { "refused", STEAD_COLUMN_REFUSED, FISH },
  { "left feed", STEAD_COLUMN_REFUSED, FISH }, { "not eaten", STEAD_COLUMN_REFUSED, FISH },
  { "sobro", STEAD_COLUMN_REFUSED, FISH }, { "sobro alimento", STEAD_COLUMN_REFUSED, FISH },
  { "alimento sobrante", STEAD_COLUMN_REFUSED, FISH },

  { "group", STEAD_COLUMN_GROUP, SCALE }, { "fish group", STEAD_COLUMN_GROUP, SCALE },
  { "cohort", STEAD_COLUMN_GROUP, SCALE }, { "batch", STEAD_COLUMN_GROUP, SCALE },
  { "grupo", STEAD_COLUMN_GROUP, SCALE }, { "grupo de peces", STEAD_COLUMN_GROUP, SCALE },

  { "count", STEAD_COLUMN_COUNT, SCALE }, { "number", STEAD_COLUMN_COUNT, SCALE },
  { "fish", STEAD_COLUMN_COUNT, SCALE }, { "fish weighed", STEAD_COLUMN_COUNT, SCALE },
  { "number of fish", STEAD_COLUMN_COUNT, SCALE }, { "sample", STEAD_COLUMN_COUNT, SCALE },
  { "cuenta", STEAD_COLUMN_COUNT, SCALE }, { "numero", STEAD_COLUMN_COUNT, SCALE },
  { "peces", STEAD_COLUMN_COUNT, SCALE }, { "peces pesados", STEAD_COLUMN_COUNT, SCALE },
  { "numero de peces", STEAD_COLUMN_COUNT, SCALE },

  { "weight", STEAD_COLUMN_WEIGHT, SCALE }, { "fish weight", STEAD_COLUMN_WEIGHT, SCALE },
  { "weight of fish", STEAD_COLUMN_WEIGHT, SCALE }, { "peso", STEAD_COLUMN_WEIGHT, SCALE },
  { "peso del pez", STEAD_COLUMN_WEIGHT, SCALE },

  { "mean weight", STEAD_COLUMN_MEAN_WEIGHT, SCALE }, { "average weight", STEAD_COLUMN_MEAN_WEIGHT, SCALE },
  { "weight each", STEAD_COLUMN_MEAN_WEIGHT, SCALE }, { "mean", STEAD_COLUMN_MEAN_WEIGHT, SCALE },
  { "peso medio", STEAD_COLUMN_MEAN_WEIGHT, SCALE }, { "peso promedio", STEAD_COLUMN_MEAN_WEIGHT, SCALE },

  { "total weight", STEAD_COLUMN_TOTAL_WEIGHT, SCALE }, { "weight together", STEAD_COLUMN_TOTAL_WEIGHT, SCALE },
  { "total", STEAD_COLUMN_TOTAL_WEIGHT, SCALE }, { "sample weight", STEAD_COLUMN_TOTAL_WEIGHT, SCALE },
  { "peso total", STEAD_COLUMN_TOTAL_WEIGHT, SCALE }, { "peso junto", STEAD_COLUMN_TOTAL_WEIGHT, SCALE },

  { "length", STEAD_COLUMN_LENGTH, SCALE }, { "total length", STEAD_COLUMN_LENGTH, SCALE },
  { "mean length", STEAD_COLUMN_LENGTH, SCALE }, { "largo", STEAD_COLUMN_LENGTH, SCALE },
  { "longitud", STEAD_COLUMN_LENGTH, SCALE }, { "largo total", STEAD_COLUMN_LENGTH, SCALE },
};

/* "Feed (lb)": the name without signs, and what stands in brackets. */
static char *
fold_name (const char  *text,
           char       **out_bracket)
{
  const char *open = strpbrk (text, "([");
  const char *close = open != NULL ? strpbrk (open, ")]") : NULL;
  g_autofree char *outside = open != NULL ? g_strndup (text, (gsize) (open - text)) : g_strdup (text);
  g_autofree char *folded = stead_line_fold (outside);
  GString *name = g_string_new (NULL);

  *out_bracket = open != NULL && close != NULL ? g_strndup (open + 1, (gsize) (close - open - 1)) : NULL;
  for (const char *p = folded; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (g_unichar_isalnum (c))
        g_string_append_unichar (name, c);
      else if (name->len > 0 && name->str[name->len - 1] != ' ')
        g_string_append_c (name, ' ');
    }
  return g_strchomp (g_string_free (name, FALSE));
}

static SteadColumn
find_column (SteadImportKind  kind,
             const char      *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if ((names[i].kinds & (1u << kind)) != 0 && g_str_equal (names[i].name, name))
      return names[i].column;
  return STEAD_COLUMN_NONE;
}

/* "Feed, lb" and "feed lb": a unit as the last word. */
static SteadColumn
find_with_unit (SteadImportKind   kind,
                const char       *name,
                const SteadUnit **out_unit)
{
  const char *space = strrchr (name, ' ');
  g_autofree char *start = NULL;

  if (space == NULL)
    return STEAD_COLUMN_NONE;
  *out_unit = stead_unit_from_text (space + 1);
  if (*out_unit == NULL)
    return STEAD_COLUMN_NONE;
  start = g_strndup (name, (gsize) (space - name));
  return find_column (kind, start);
}

static SteadColumn
read_name (SteadImportKind   kind,
           const char       *text,
           const SteadUnit **out_unit)
{
  g_autofree char *bracket = NULL;
  g_autofree char *name = fold_name (text, &bracket);
  SteadColumn column = find_column (kind, name);

  *out_unit = NULL;
  if (column == STEAD_COLUMN_NONE)
    column = find_with_unit (kind, name, out_unit);
  else if (bracket != NULL)
    *out_unit = stead_unit_from_text (bracket);
  return column;
}

gboolean
stead_import_columns_find (SteadImportKind      kind,
                           const char * const  *header,
                           SteadColumns        *out,
                           GError             **error)
{
  for (int i = 0; i < STEAD_N_COLUMNS; i++)
    {
      out->at[i] = -1;
      out->unit[i] = NULL;
    }
  for (int i = 0; i < STEAD_IMPORT_MAX_COLUMNS && header[i] != NULL; i++)
    {
      const SteadUnit *unit;
      SteadColumn column = read_name (kind, header[i], &unit);

      if (column == STEAD_COLUMN_NONE)
        continue;
      if (out->at[column] >= 0)
        {
          g_set_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT,
                       _("The columns “%s” and “%s” mean the same. Rename or delete one of them."),
                       header[out->at[column]], header[i]);
          return FALSE;
        }
      out->at[column] = i;
      out->unit[column] = unit;
    }
  if ((out->at[STEAD_COLUMN_DATE] >= 0 || kind == STEAD_IMPORT_PEOPLE) && stead_import_methods (kind)->is_complete (out))
    return TRUE;
  g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT, _(stead_import_methods (kind)->needs));
  return FALSE;
}

static const char *
column_title (SteadColumn column)
{
  switch (column)
    {
    case STEAD_COLUMN_DATE: return C_("column", "Date");
    case STEAD_COLUMN_CLASS_YEAR: return C_("column", "Class of");
    case STEAD_COLUMN_ROLE: return C_("column", "Role");
    case STEAD_COLUMN_EGGS: return C_("column", "Eggs");
    case STEAD_COLUMN_CRACKED: return C_("column", "Cracked");
    case STEAD_COLUMN_FEED: return C_("column", "Feed");
    case STEAD_COLUMN_DEATHS: return C_("column", "Deaths");
    case STEAD_COLUMN_CULLED: return C_("column", "Culled");
    case STEAD_COLUMN_LEFT_OUT: return C_("column", "Left out");
    case STEAD_COLUMN_NOTE: return C_("column", "Note");
    case STEAD_COLUMN_PERSON: return C_("column", "By");
    case STEAD_COLUMN_SUPPLIER: return C_("column", "Supplier");
    case STEAD_COLUMN_ITEM: return C_("column", "Item");
    case STEAD_COLUMN_KIND: return C_("column", "Kind");
    case STEAD_COLUMN_QUANTITY: return C_("column", "Quantity");
    case STEAD_COLUMN_UNIT: return C_("column", "Unit");
    case STEAD_COLUMN_COST: return C_("column", "Cost");
    case STEAD_COLUMN_GIFT: return C_("column", "Gift");
    case STEAD_COLUMN_BEST_BY: return C_("column", "Best by");
    case STEAD_COLUMN_REFERENCE: return C_("column", "Reference");
    case STEAD_COLUMN_TEMPERATURE: return C_("column", "Temperature");
    case STEAD_COLUMN_HIGHEST: return C_("column", "Highest temperature");
    case STEAD_COLUMN_LOWEST: return C_("column", "Lowest temperature");
    case STEAD_COLUMN_HUMIDITY: return C_("column", "Humidity, %");
    case STEAD_COLUMN_LIGHT: return C_("column", "Light, mol/m²");
    case STEAD_COLUMN_PICKED: return C_("column", "Picked");
    case STEAD_COLUMN_GRADE: return C_("column", "Grade");
    case STEAD_COLUMN_THROWN: return C_("column", "Thrown out");
    case STEAD_COLUMN_REFUSED: return C_("column", "Feed left");
    case STEAD_COLUMN_REASON: return C_("column", "Reason");
    case STEAD_COLUMN_GROUP: return C_("column", "Group");
    case STEAD_COLUMN_COUNT: return C_("column", "Number");
    case STEAD_COLUMN_WEIGHT: return C_("column", "Weight of one");
    case STEAD_COLUMN_MEAN_WEIGHT: return C_("column", "Mean weight");
    case STEAD_COLUMN_TOTAL_WEIGHT: return C_("column", "Total weight");
    case STEAD_COLUMN_LENGTH: return C_("column", "Length");
    case STEAD_COLUMN_AMOUNT: return C_("column", "Amount");
    case STEAD_COLUMN_MONEY_IN: return C_("column", "Money in");
    case STEAD_COLUMN_MONEY_OUT: return C_("column", "Money out");
    case STEAD_COLUMN_TEXT: return C_("column", "Description");
    case STEAD_COLUMN_TIME: return C_("column", "Time");
    case STEAD_COLUMN_NONE:
    default: return "";
    }
}

char *
stead_import_column_name (SteadColumn      column,
                          const SteadUnit *unit)
{
  if (unit == NULL || column == STEAD_COLUMN_NONE)
    return g_strdup (column_title (column));
  /* Translators: name of a column and its unit: "Feed, lb". */
  return g_strdup_printf (C_("column", "%s, %s"), column_title (column), stead_unit_symbol (unit));
}
