/* stead-packet-source.c - what the packets of one run share, each made once. */
#include "config.h"

#include "answer/stead-packet-private.h"

SteadPacketSource *
stead_packet_source_new (void)
{
  SteadPacketSource *source = g_new0 (SteadPacketSource, 1);

  source->statements = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                              (GDestroyNotify) stead_statement_answer_free);
  source->months = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_ptr_array_unref);
  source->batches = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free,
                                           (GDestroyNotify) stead_batch_answer_free);
  source->kitchens = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free,
                                            (GDestroyNotify) stead_kitchen_answer_free);
  source->builds = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free,
                                          (GDestroyNotify) stead_build_answer_free);
  source->lines = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free,
                                         (GDestroyNotify) stead_packet_lines_free);
  source->entries = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  return source;
}

void
stead_packet_source_free (SteadPacketSource *source)
{
  if (source == NULL)
    return;
  g_hash_table_unref (source->statements);
  g_hash_table_unref (source->months);
  g_hash_table_unref (source->batches);
  g_hash_table_unref (source->kitchens);
  g_hash_table_unref (source->builds);
  g_hash_table_unref (source->lines);
  g_hash_table_unref (source->entries);
  g_free (source);
}

const SteadStatementAnswer *
stead_packet_statement (SteadPacketMaking  *making,
                        GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autofree char *key = g_strdup_printf ("%d %d", packet->from_on, packet->to_on);
  SteadStatementAnswer *statement = g_hash_table_lookup (making->source->statements, key);

  if (statement == NULL
      && (statement = stead_statement_answer_new (making->store, packet->from_on, packet->to_on, 0, error)) != NULL)
    g_hash_table_insert (making->source->statements, g_steal_pointer (&key), statement);
  return statement;
}

const GPtrArray *
stead_packet_months (SteadPacketMaking  *making,
                     GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autofree char *key = g_strdup_printf ("%d %d", packet->from_on, packet->to_on);
  GPtrArray *months = g_hash_table_lookup (making->source->months, key);

  if (months == NULL
      && (months = stead_months_repo_list (making->store, packet->from_on, packet->to_on, error)) != NULL)
    g_hash_table_insert (making->source->months, g_steal_pointer (&key), months);
  return months;
}

const SteadBatchAnswer *
stead_packet_batch (SteadPacketMaking  *making,
                    gint64              batch_id,
                    GError            **error)
{
  SteadBatchAnswer *batch = g_hash_table_lookup (making->source->batches, &batch_id);

  if (batch == NULL && (batch = stead_batch_answer_new (making->store, batch_id, error)) != NULL)
    g_hash_table_insert (making->source->batches, g_memdup2 (&batch_id, sizeof batch_id), batch);
  return batch;
}

const SteadKitchenAnswer *
stead_packet_kitchen (SteadPacketMaking  *making,
                      gint64              batch_id,
                      GError            **error)
{
  SteadKitchenAnswer *kitchen = g_hash_table_lookup (making->source->kitchens, &batch_id);

  if (kitchen == NULL && (kitchen = stead_kitchen_answer_new (making->store, batch_id, error)) != NULL)
    g_hash_table_insert (making->source->kitchens, g_memdup2 (&batch_id, sizeof batch_id), kitchen);
  return kitchen;
}

const SteadBuildAnswer *
stead_packet_build (SteadPacketMaking  *making,
                    gint64              build_id,
                    GError            **error)
{
  SteadBuildAnswer *build = g_hash_table_lookup (making->source->builds, &build_id);

  if (build == NULL && (build = stead_build_answer_new (making->store, build_id, error)) != NULL)
    g_hash_table_insert (making->source->builds, g_memdup2 (&build_id, sizeof build_id), build);
  return build;
}
