/* stead-given-ids.c - ids that new things were given, until it is sure that they are kept. */
#include "config.h"

#include "store/stead-given-ids.h"

typedef struct
{
  gint64 *at;
  gint64  was;
} GivenId;

struct _SteadGivenIds
{
  GArray *ids;   /* of GivenId */
};

SteadGivenIds *
stead_given_ids_new (gint64 *id)
{
  SteadGivenIds *self = g_new0 (SteadGivenIds, 1);

  self->ids = g_array_new (FALSE, FALSE, sizeof (GivenId));
  stead_given_ids_add (self, id);
  return self;
}

void
stead_given_ids_add (SteadGivenIds *self,
                     gint64        *id)
{
  GivenId given = { id, *id };

  g_array_append_val (self->ids, given);
}

gboolean
stead_given_ids_end (SteadGivenIds *self,
                     gboolean       done)
{
  for (guint i = 0; i < self->ids->len && !done; i++)
    {
      const GivenId *given = &g_array_index (self->ids, GivenId, i);

      *given->at = given->was;
    }
  g_array_unref (self->ids);
  g_free (self);
  return done;
}
