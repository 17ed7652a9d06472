/* stead-jpeg.c - the markers of a JPEG picture. */
#include "config.h"

#include "core/stead-jpeg.h"

enum
{
  MARK = 0xff,
  SOI = 0xd8,
  EOI = 0xd9,
  SOS = 0xda,
  TEM = 0x01,
  COM = 0xfe,
};

/* One marker segment before the first scan. */
typedef struct
{
  int   kind;
  gsize at;       /* of its 0xff */
  gsize size;     /* with the marker */
} Segment;

static gboolean
is_frame (int kind)
{
  return kind >= 0xc0 && kind <= 0xcf && kind != 0xc4 && kind != 0xc8 && kind != 0xcc;
}

/* Says nothing about how the picture looks. */
static gboolean
is_talk (int kind)
{
  return (kind >= 0xe1 && kind <= 0xed) || kind == 0xef || kind == COM;
}

/* The segment that begins at @at; fill bytes before it belong to it. */
static gboolean
next_segment (const guint8 *data,
              gsize         length,
              gsize         at,
              Segment      *out)
{
  gsize mark = at;

  if (at >= length || data[at] != MARK)
    return FALSE;
  while (mark < length && data[mark] == MARK)
    mark++;
  if (mark >= length || data[mark] == 0)
    return FALSE;
  *out = (Segment) { .kind = data[mark], .at = at, .size = mark + 1 - at };
  if (out->kind == EOI || out->kind == TEM || (out->kind >= 0xd0 && out->kind <= 0xd7))
    return TRUE;
  if (mark + 2 >= length)
    return FALSE;
  out->size += (gsize) data[mark + 1] << 8 | data[mark + 2];
  return out->size >= mark + 3 - at && out->size <= length - at;
}

gboolean
stead_jpeg_read_size (const guint8 *data,
                      gsize         length,
                      int          *out_width,
                      int          *out_height)
{
  int width = 0, height = 0;
  gsize at = 2;
  Segment segment;

  if (length < 4 || data[0] != MARK || data[1] != SOI || data[length - 2] != MARK || data[length - 1] != EOI)
    return FALSE;
  while (next_segment (data, length, at, &segment) && segment.kind != EOI)
    {
      const guint8 *facts;

      at += segment.size;
      if (segment.kind == SOS)
        {
          if (width <= 0 || height <= 0)
            return FALSE;
          *out_width = width;
          *out_height = height;
          return TRUE;
        }
      if (!is_frame (segment.kind) || segment.size < 10)
        continue;
      for (facts = data + segment.at; *facts == MARK; facts++)
        ;
      height = facts[4] << 8 | facts[5];
      width = facts[6] << 8 | facts[7];
    }
  return FALSE;
}

GBytes *
stead_jpeg_strip (GBytes *jpeg)
{
  gsize length;
  const guint8 *data = g_bytes_get_data (jpeg, &length);
  g_autoptr(GByteArray) out = g_byte_array_new ();
  gsize at = 2;
  int width, height;
  Segment segment;

  if (!stead_jpeg_read_size (data, length, &width, &height))
    return g_bytes_ref (jpeg);
  g_byte_array_append (out, data, 2);
  while (next_segment (data, length, at, &segment) && segment.kind != SOS)
    {
      if (!is_talk (segment.kind))
        g_byte_array_append (out, data + segment.at, (guint) segment.size);
      at += segment.size;
    }
  g_byte_array_append (out, data + at, (guint) (length - at));
  if (out->len == length)
    return g_bytes_ref (jpeg);
  return g_byte_array_free_to_bytes (g_steal_pointer (&out));
}
