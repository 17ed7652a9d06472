/* stead-question-put.c - one figure of a question's answer, under its name. */
#include "config.h"

#include "answer/stead-question-private.h"
#include "answer/stead-words.h"

#include <math.h>

void
stead_put_text (JsonBuilder *out,
                const char  *name,
                const char  *text)
{
  json_builder_set_member_name (out, name);
  if (text != NULL)
    json_builder_add_string_value (out, text);
  else
    json_builder_add_null_value (out);
}

void
stead_put_plain (JsonBuilder *out,
                 const char  *name,
                 const char  *markup)
{
  g_autofree char *plain = markup != NULL ? stead_words_plain (markup) : NULL;

  stead_put_text (out, name, plain);
}

void
stead_put_int (JsonBuilder *out,
               const char  *name,
               gint64       value)
{
  json_builder_set_member_name (out, name);
  json_builder_add_int_value (out, value);
}

void
stead_put_count (JsonBuilder *out,
                 const char  *name,
                 gint64       value)
{
  if (value >= 0)
    stead_put_int (out, name, value);
  else
    stead_put_text (out, name, NULL);
}

void
stead_put_real (JsonBuilder *out,
                const char  *name,
                double       value)
{
  json_builder_set_member_name (out, name);
  if (isfinite (value))
    json_builder_add_double_value (out, value);
  else
    json_builder_add_null_value (out);
}

void
stead_put_day (JsonBuilder *out,
               const char  *name,
               SteadDay     day)
{
  g_autofree char *text = day != STEAD_DAY_NONE ? stead_day_format (day, STEAD_DAY_STYLE_ISO) : NULL;

  stead_put_text (out, name, text);
}

void
stead_put_list (JsonBuilder     *out,
                const char      *name,
                const GPtrArray *items,
                SteadPutItem     put)
{
  json_builder_set_member_name (out, name);
  json_builder_begin_array (out);
  for (guint i = 0; i < items->len; i++)
    {
      json_builder_begin_object (out);
      put (out, items->pdata[i]);
      json_builder_end_object (out);
    }
  json_builder_end_array (out);
}
