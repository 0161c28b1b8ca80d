/**
 * What the words of a column header can mean, in English, German, Spanish, French, Italian, Dutch, Polish, Swedish and
 * Japanese: plain trade words and the usual short forms. Entries are parted by `|` and stand in lower case without accents; `_`
 * marks the edge of a word, an entry without it may be part of a compound, as in Motordrehzahl; `=` stands before
 * what is the whole header.
 */
const conceptWords = {
  time: '_time_|_times_|timestamp|time stamp|_zeit_|zeitstempel|messzeit|laufzeit|_tiempo_|_temps_|_t_|elapsed|_seconds_|_sec_|_secs_|_sekunden_|_segundos_|_secondes_|_hora_|_heure_|_uhrzeit_|_clock_|_millis_|_ms_|horodatage|marca de tiempo|chrono|_duree_|_datetime_|date time|stopwatch|_tempo_|_ora_|trascorso|_tijd_|tijdstip|tijdstempel|_czas_|znacznik czasu|_godzina_|時間|時刻|日時|_tid_|_tiden_|tidsstampel|_klockslag_|_tidspunkt_',
  engine: 'engine|_eng_|motor|moteur|motore|crank|kurbelwelle|ciguenal|vilebrequin|silnik|_mot_|エンジン',
  turns:
    '_rpm_|_rpms_|drehzahl|_revs_|_rev_|_tacho_|tachometer|_regime_|regimen|revoluciones|_tours_|umdrehung|revolutions|_upm_|_giri_|_nmot_|vueltas|compte tours|_u min_|_tr min_|_n_|toerental|_toeren_|obroty|obrotowa|_obr min_|_omw min_|_motordrehz|_drehz_|reg moteur|回転|varvtal|_varv_|turtall|omdrejninger|omdreininger',
  speed:
    'speed|geschwindigkeit|_geschw|velocidad|vitesse|velocity|_vss_|_vel_|_v_|_mph_|_kmh_|_kph_|_km h_|_tempo_|_speedo_|_spd_|velocita|snelheid|predkosc|_geschw_|車速|速度|スピード|車輪速|hastighet|hastighed|_fart_',
  vehicle:
    'vehicle|_car_|fahrzeug|_fzg_|vehiculo|coche|vehicule|voiture|_veh_|_road_|_ground_|fahrgeschw|_vss_|veicolo|vettura|voertuig|rijsnelheid|pojazd|車速|車両|車体|fordon|kjoretoy',
  wheel:
    '_wheel_|_wheels_|_rad_|raddreh|radgeschw|radleist|radmoment|achsmoment|achsleist|nabenmoment|nabenleist|_axle_|_axles_|raeder|_rueda_|_ruedas_|_roue_|_roues_|_hub_|_whp_|_wtq_|roller|rodillo|rouleau|_rolle_|wielsnelheid|_wiel_|_wielen_|_ruota_|_ruote_|_kola_|_kolo_|_kol_|車輪|ホイール|_hjul',
  gps: '_gps_|_gnss_|satellit',
  gear: '_gear_|_gang_|gangstufe|ganganzeige|eingelegter gang|_marcha_|_rapport_|current gear|rapport engage|_gears_|vitesse engagee|vitesse enclenchee|_marcia_|_versnelling_|_bieg_|ギア|ギヤ|変速段|シフト段|_vaxel_|ilagd vaxel',
  ratio: '_ratio_|ubersetzung|uebersetzung|_relacion_|ギア比|ギヤ比|変速比',
  pedal:
    'pedal|_accelerator_|acelerador|accelerateur|_app_|_pps_|_apps_|fahrerwunsch_|driver demand_|driver request_|pedaal|_gas pedal_|アクセル|ペダル',
  throttle:
    'throttle|drossel|mariposa|papillon|_tps_|_tp_|gashebel|_gas_|gasstellung|_klappe_|_throt_|acelerador electronico|_etb_|_thr_|_dk_|farfalla|gasklep|smoorklep|przepustnic|スロットル|spjall',
  manifold:
    'manifold|_map_|saugrohr|_colector_|collecteur|_plenum_|ansaugrohr|_manif_|_man_|collettore|spruitstuk|kolektor|マニホールド|マニホルド|インマニ|吸気管|サージタンク|insugsror|insugningsror',
  intake:
    'intake|inlet|_iat_|_mat_|ansaug|admision|admission|charge air|charged air|air charge|ladeluft|saugluft|lufttemp|_air_|_aire_|_air_|_luft_|aspiration|aspire|sobrealimentado|air temp|_charge_temp|_charge temp|aspirazione|aspirata|_aria_|ammissione|inlaat|aanzuig|_lucht_|inlaatlucht|_tair_|_tinlet_|_tintake_|dolot|_powietrza_|_powietrze_|=act|吸気|給気|インテーク|insug|laddluft',
  pressure:
    'pressure|_press_|druck|presion|pression|_pres_|_p_|pressione|druk_|drukk|cisnieni|圧|tryck|trykk|_tryk_',
  boost:
    'boost|ladedruck|_lade druck_|sobrealimentacion|suralimentation|soplado|uberdruck|ueberdruck|turbodruck|presion turbo|presion de turbo|presion del turbo|pression turbo|pression de turbo|turbo pressure|charge pressure|charging pressure|aufladung|_turbo_|sovralimenta|pressione turbo|turbodruk|laaddruk|vuldruk|doladowan|cisnienie turbo|ladeluftdruck|ブースト|過給|laddtryck|laddlufttryck|ladetryk',
  gauge:
    '_gauge_|_rel_|relativ|uberdruck|ueberdruck|_gage_|manometrica|_psig_|_barg_|nadcisnieni|overdruk|relatiev|ゲージ圧|相対圧|overtryck|overtrykk',
  absolute: '_abs_|absolut|_psia_|_bara_|_kpaa_|_ass_|assolut|absoluut|bezwzgl|絶対',
  target:
    'target|_wunsch|_soll|_soll_|sollwert|solldruck|soll_|objetivo|consigne|desired|setpoint|set point|_goal_|request|_demand_|commanded|_cible_|deseado|deseada|_cmd_|_command_|vorgabe|_ziel|zielwert|_spec_|specified|_ref_|_wanted_|obiettivo|richiest|desiderat|gewenst|streefwaarde|zadan|docelow|wymagan|目標|要求|指示|指令|borvarde|_bor_|malvarde|onskat|onskad|begart',
  error:
    '_error_|_err_|abweichung|deviation|_diff_|difference|_delta_|_ecart_|differenz|_desviacion_|afwijking|scostamento|errore|odchyl|uchyb|偏差|誤差|avvikelse|avvik_',
  baro: '_baro_|barometric pressure|baromet|atmospher|atmosphar|atmosphaer|atmosfer|umgebungsdruck|ambient press|ambient pressure|presion ambiente|pression ambiante|aussendruck|_luftdruck_|aussenluftdruck|umgebungsluftdruck|_atm_|_luchtdruk_|omgevingsdruk|buitenluchtdruk|pressione ambiente|cisnienie otoczenia|大気圧|外気圧|_lufttryck_|omgivningstryck|atmosfarstryck|_lufttrykk_',
  wastegate:
    'wastegate|waste gate|_wg_|_wgdc_|boost solenoid|boost control|boost duty|boost valve|ladedruckventil|ladedruckregel|valvula de descarga|soupape de decharge|ladedrucksteller|boost pwm|ウェストゲート|ウエストゲート|ウェイストゲート|ウエイストゲート',
  duty: 'duty|_dc_|tastverhaltnis|tastverhaeltnis|taktverhaltnis|taktverhaeltnis|tastgrad|taktung|_ciclo_|cyclique|_pwm_|auslastung|_idc_|_wgdc_|solenoid|ansteuerung|einschaltdauer|apertura|ouverture|wypelnien|inschakelduur|_taux_|デューティ|pulskvot|oppningsgrad|arbetscykel',
  spark:
    'spark|ignition|zundwinkel|zuendwinkel|zundung|zuendung|vorzundung|vorzuendung|zundzeit|zuendzeit|encendido|_avance_|allumage|_timing_|_advance_|_ign_|_zzp_|_zw_|ign angle|fruhzundung|accension|_anticipo_|ontsteking|zaplon|点火時期|点火進角|点火|tandning|tandvinkel|tandlage|tenning',
  knock:
    'knock|klopf|picado|detonacion|cliquetis|detonation|_kr_|_ping_|detonazione|_battito_|pingel|klopcorr|_klop_|stukow|ノック|ノッキング|knackning|_knack_|spikning',
  retard:
    'retard|ruecknahme|rucknahme|_retraso_|_retrait_|_kr_|spatverstellung|spaetverstellung|_pull_|_pulled_|_correction_|_korrektur_|klopfkorrektur|verstellung|winkelruck|_retiro_|_correccion_|klopfregelung|_ritardo_|_correzione_|_corr_|correctie|cofniec|_korekta_|遅角|リタード|ノック補正|sankning',
  level:
    '_level_|_levels_|_pegel_|klopfpegel|intensity|_noise_|_nivel_|_niveau_|_signal_|gerausch|geraeusch|fullstand|fuellstand|tankinhalt|_ruido_|_bruit_|_sensor_|klopfsensor|klopfsignal|_voltage_|ノックレベル|ノック強度|ノックセンサ|ノック信号|残量|_niva_',
  count:
    '_count_|_counts_|_counter_|_events_|anzahl|zahler|zaehler|_contador_|compteur|_event_|ereignis|_cuenta_|_nombre_|_sum_|回数|カウント|_antal_',
  lambda: 'lambda|_λ_|_lam_|luftverhaltnis|luftverhaeltnis|luftzahl|_eqr_|ラムダ|空気過剰率',
  afr: '_afr_|air fuel|_a f_|wideband|wide band|breitband|_wb_|_wbo_|aire combustible|air carburant|mezcla|_gemisch_|luft kraftstoff|air to fuel|aria carburante|lucht brandstof|powietrze paliwo|空燃比|luft bransle',
  temp: 'temperatur|temperature|temperatura|_temp_|_temps_|temp_|_tmp_|_iat_|_ect_|_clt_|_egt_|_mat_|_cht_|temperatuur|_tair_|_tinlet_|_tintake_|_twater_|_tcoolant_|_toil_|_t intake_|_t inlet_|_t air_|_t oil_|_t water_|_t coolant_|_t exhaust_|_t fuel_|_t amb_|=act|温',
  ambient:
    'ambient|outside|aussen|_umgebung|umgebungs|exterior|exterieur|ambiente|ambiant|_oat_|estern|buitentemp|buitenlucht|omgeving|otoczeni|zewnetrzn|外気|大気温|omgivning|utomhus|yttertemp|uteluft|utetemp',
  coolant:
    'coolant|_ect_|_clt_|_water_|_twater_|kuhlmittel|kuehlmittel|kuhlwasser|kuehlwasser|wassertemp|refrigerante|_agua_|refroidissement|_eau_|_wt_|_cool_|_wasser_|anticongelante|_acqua_|raffreddamento|koelwater|koelvloeistof|chlodz|_plynu_|水温|冷却水|クーラント|kylvatten|kylvatsk|_vattentemp|kjolevann|kjolevaeske',
  oil: '_oil_|_toil_|_ol_|_oel_|oltemp|oeltemp|motorol|motoroel|_aceite_|_huile_|oldruck|oeldruck|getriebeol|_olio_|_olie_|olietemp|oliedruk|_oleju_|_olej_|油温|油圧|オイル|_olja_|_oljan_|oljetemp|oljetryck|motorolja|_olje_',
  exhaust:
    '_egt_|_egts_|exhaust|abgas|_escape_|echappement|scarico|uitlaat|spalin|wydech|排気|排温|avgas|eksos',
  fuel: '_fuel_|kraftstoff|benzin|combustible|gasolina|carburant|essence|sprit|_rail_|kraftst|_carburante_|benzina|brandstof|paliw|燃料|燃圧|燃温|bransle|drivstoff',
  airflow:
    '_maf_|luftmassenstrom|luftmasse|air mass|mass air|mass flow|massflow|airflow|air flow|masa de aire|masa aire|masse d air|debit d air|luftstrom|luftdurchsatz|flujo de aire|caudal de aire|flujo masico|air massique|massenstrom|portata aria|massa aria|massa d aria|luchtmassa|luchtstroom|przeplyw powietrza|masa powietrza|吸入空気|空気流量|空気量|エアフロ|luftmassa|luftflode|massflode',
  /** Air by volume or by stroke, which is no mass in a time. */
  bulk: '_m 3_|_m h_|_m s_|_cfm_|_scfm_|_l s_|_lps_|_l sec_|_l min_|_mg_|_g rev_|_g stroke_|_g hub_|_per stroke_|_per rev_|volumenstrom|_volume_|volumetric|体積流量',
  load: '_load_|_last_|motorlast|_carga_|charge moteur|charge du moteur|_charge calculee_|lastwert|fullung|fuellung|_filling_|volumetric|_ve_|_llenado_|remplissage|_carico_|belasting|obciazeni|負荷|充填効率|belastning|fyllnadsgrad',
  injector:
    'injector|_inj_|einspritz|inyector|injecteur|injection|inyeccion|_dusen|duesen|_idc_|_ipw_|iniettor|inspuit|wtrysk|インジェクタ|インジェクター|噴射|開弁|spridar|insprutning',
  pulse:
    '_pulse_|pulsewidth|pulse width|_pw_|_ipw_|_width_|_time_|zeit_|_tiempo_|_temps_|_dauer_|_ti_|_duration_|_duree_|einspritzdauer|einspritzzeit|impuls|on time|_ms_|ancho de pulso|largeur|噴射時間|開弁時間|パルス幅|噴射パルス|spridartid|insprutningstid|oppningstid',
  flow: '_flow_|durchfluss|_caudal_|_debit_|verbrauch|consumption|flowrate|flow rate|_rate_|durchsatz|consumo|consommation|menge|_flujo_|fluss_|_volumenstrom_|_portata_|doorstroming|przeplyw|流量|噴射量|消費|flode_|forbrukning',
  trim: '_trim_|_trims_|_stft_|_ltft_|gemischkorrektur|gemischadaption|adaption|_ajuste_|_correction_|_korrektur_|adaptation|kraftstoffkorrektur|_correccion_|_correttivo_|_korekta_paliwa_|_regulation_|regelung|regler|_comp_|_compensation_|_offset_|補正|トリム|フィードバック|branslekorrigering|_korrigering_',
  short:
    '_short_|_stft_|kurzzeit|_kurz|_corto_|_court_|closed loop|_corta_|_st_|_courte_|court terme|corto plazo|短期|korttid',
  long: '_long_|_ltft_|langzeit|_lang|_largo_|_larga_|_lt_|_longue_|_learn|long terme|largo plazo|長期|学習|langtid',
  fluid:
    '_fluid_|_spray_|methanol|_meth_|water inj|wassereinspritz|wasser inj|inyeccion de agua|inyeccion agua|injection d eau|injection eau|_wai_|_wi_|injection agua|water meth|water alcohol|_fluido_|_fluide_|metanol|_flussigkeit|_fluessigkeit|_spruh|_sprueh|wasser methanol|alkohol|水噴射|メタノール|ウォーターインジェクション|アルコール噴射|vatteninsprutning|vatten metanol|_vatska_',
  pump: 'pump|bomba|pompe|ポンプ',
  power:
    '_power_|leistung|_potencia_|_puissance_|_hp_|_kw_|_bhp_|_whp_|_ps_|_cv_|_potenza_|vermogen|_moc_|馬力|エンジン出力|軸出力|車輪出力|=出力|_effekt_|hjuleffekt|motoreffekt|hastkrafter',
  torque:
    'torque|drehmoment|_moment_|_par_|_couple_|motormoment|_trq_|_tq_|_nm_|_wtq_|raddrehmoment|radmoment|achsmoment|nabenmoment|_coppia_|koppel_|moment_obrotowy|トルク|vridmoment|hjulmoment|dreiemoment',
  acceleration:
    'acceleration|beschleunigung|aceleracion|_accel_|g force|_acc_|_gforce_|langsb|laengsb|加速度|前後g',
  lateral: 'lateral|_quer|_y_|vertical|_z_|seitlich|vertikal|transversal|横加速度|左右加速度|上下加速度',
  altitude:
    'altitude|altitud|_alt_|_hohe_|_hoehe_|elevation|_height_|meereshohe|_altura_|altitudine|_hoogte_|wysokosc|標高|高度|_hojd_',
  distance:
    'distance|_strecke_|_distancia_|_dist_|_weg_|odometer|wegstrecke|kilometerstand|recorrido|distanza|_afstand_|dystans|_trip_|距離|stracka_',
  latitude: 'latitude|latitud|breitengrad|_breite_|_lat_|緯度',
  longitude: 'longitude|longitud|langengrad|laengengrad|_lange_|_laenge_|_lon_|_lng_|経度',
  heading:
    '_heading_|_course_|_kurs_|_cog_|_bearing_|_kurswinkel_|fahrtrichtung|_rumbo_|_rotta_|_koers_|方位|進行方向',
  /** The whole header alone: a track is also a circuit, a Richtung a switch, a cap a capacity. */
  track:
    '=track|=gps track|=track gps|=true track|=track true|=track angle|=track over ground|=richtung|=gps richtung|=richtung gps|=cap|=gps cap|=cap gps|=cap vrai',
  battery:
    'battery|batterie|bateria|_vbat_|_batt_|bordspannung|bordnetz|_vbatt_|system voltage|supply voltage|batteria|accuspanning|akumulator|バッテリ|batteri_|batterispann',
  ethanol: 'ethanol|flex fuel|flexfuel|etanol|_eth_|alcohol content|alkoholgehalt|エタノール',
  humidity: 'humidity|feucht|humedad|humidite|_rh_|umidita|vochtigheid|wilgotnosc|湿度|fuktighet',
  traction:
    'traction|traktion|traccion|antriebsschlupf|_tc_|_tcs_|_asr_|wheelspin|wheel spin|schlupfregel|antipatinage|antislip|トラクション',
  limiter:
    'limiter|begrenz|limitador|limiteur|rev limit|drehzahlgrenze|rev cut|fuel cut|ign cut|spark cut|ignition cut|corte de|coupure|_limit_active_|リミッタ|レブリミット|燃料カット|点火カット|varvstopp|begransning',
  /** How fast something changes, which is another quantity than the thing. */
  change:
    '_rate_|gradient|_change_|derivative|_derivada_|_derivee_|anderung|aenderung|_variation_|_slope_|_roc_|変化率|変化量|微分',
  /** What a sensor puts out before it is turned into the quantity. */
  raw: '_volt_|_volts_|_voltage_|spannung|_tension_|_tensione_|_voltaje_|napiecie|_adc_|_raw_|rohwert|電圧|spanning_',
  /** A bound or a peak that a program keeps beside the live value. */
  bound:
    '_limit_|_limits_|grenze|grenzwert|_max_|_maximum_|_minimum_|_peak_|hochstwert|_limite_|_limiet_|_maks_|最大|最小|上限|下限|ピーク',
  engaged: 'engage|enclenche|eingelegt|_inserita_|_ingeschakeld_',
  sample:
    '_sample_|_samples_|_index_|_record_|_row_|_nr_|_no_|_line_|_zeile_|_muestra_|_echantillon_|messpunkt|_point_|_frame_|_id_|_datensatz_|_ligne_|_fila_|_num_|_sample no_|サンプル|行番号|通し番号',
  date: '_date_|_datum_|_fecha_|_jour_|_day_|日付|年月日',
  /** Words that add nothing: a header loses no trust by them. */
  filler:
    '_position_|_pos_|stellung|_posicion_|_angle_|winkel|_wert|wert_|_value_|_valor_|_valeur_|_actual_|_ist_|_current_|_term_|_control_|_sensor_|_of_|_de_|_del_|_d_|_l_|_la_|_le_|_el_|_du_|_der_|_des_|_die_|_das_|_und_|_and_|_et_|_y_|_bank_|_voltage_|spannung|_content_|_gehalt|_absolute_|_abs_|_relative_|_signal_|_measured_|_gemessen|_filtered_|_average_|_mean_|_status_|_state_|_active_|_aktiv_|_percent_|_total_|_liquide_|_flussigkeit|_liquido_|_position|_elapsed_|_seit_|_start_|_since_|_gas|klappe|_mittel|_rail_|_limit|posizione|_stand_|klepstand|pedaalstand|_positie_|pozycj|polozeni|wartosc|waarde|_act_|開度|位置|ポジション|角度|センサ|センサー|信号|平均|数|力|経過|値|lage_|varde_|_ar_|grad_',
  other:
    'steering|lenk|volante|_direction_|_yaw_|brake|brems|_freno_|_frein_|clutch|kupplung|embrague|embrayage|_fan_|lufter|luefter|ventilador|ventilateur|_idle_|leerlauf|_ralenti_|gearbox|transmission|getriebetemp|getriebeol|_cam_|nockenwelle|_vvt_|_arbre_|dwell|schliess|turbine|turbospeed|lap_|_lap|runde|vuelta_|_tour_|differential|_hpfp_|_stationair_|_minimo_|jalow|koppeling|frizione|sprzegl|rempedaal|remdruk|hamulc|hamowania|ventola|koelventilator|wentylator|_gangwahl|cambio automatico|getriebeein|getriebeaus|getriebedreh|_shaft_|_input speed_|_output speed_|_switch_|_select_|_selector_|_selected_|_slot_|_mode_|schalter|umschalt|_sats_|satellites|_hdop_|_fix_|_accuracy_|heater|heizung|_wind_|_marker_|threshold|schwelle|_match_|ブレーキ|クラッチ|ステアリング|操舵|舵角|ファン|アイドル|変速機|ミッション|デフ|カム|タービン|ラップ|スイッチ|通電時間|風速|koppling|bromstryck|bromspedal|_broms_|_rattvinkel_|tomgang|vaxellad|_flakt_',
} as const;

export type Concept = keyof typeof conceptWords;

function patternOf(words: string): RegExp {
  const parts = words.split('|').map((word) => {
    if (word.startsWith('=')) return `^${word.slice(1)}$`;
    const start = word.startsWith('_') ? '(?<![a-z0-9])' : '';
    const end = word.endsWith('_') ? '(?![a-z])' : '';
    return start + word.replace(/^_|_$/g, '').replace(/[.*+?^${}()|[\]\\]/g, '\\$&') + end;
  });
  return new RegExp(parts.join('|'), 'g');
}

/** Pattern of each concept, over a header as `plainWords` leaves it. */
export const concepts: ReadonlyMap<Concept, RegExp> = new Map(
  Object.entries(conceptWords).map(([id, words]) => [id as Concept, patternOf(words)]),
);

/** A longer header is looked at by its two ends: its midst tells nothing more, and would be looked at for long. */
const longestName = 200;
/** The end of a header holds its unit. */
const endOfName = 60;

/** A header as far as it is looked at. */
export function shortenedName(header: string): string {
  if (header.length <= longestName) return header;
  return `${header.slice(0, longestName - endOfName - 1)} ${header.slice(-endOfName)}`;
}

/** Lower case, no accents, camelCase and punctuation to blanks: `Motor-Drehzahl`, `EngineSpeed`, `engine_speed`. */
export function plainWords(text: string): string {
  return (
    shortenedName(text)
      .normalize('NFC')
      // Kana of half the width, with their marks as letters of their own, and letters as wide as an ideograph.
      .replace(/[\uff01-\uff9f]+/g, (other) => other.normalize('NFKC'))
      .replace(/ß/g, 'ss')
      // No accent over a letter but letters of their own, which do not come apart.
      .replace(/[łŁ]/g, (c) => (c === 'ł' ? 'l' : 'L'))
      .replace(/[øØ]/g, (c) => (c === 'ø' ? 'o' : 'O'))
      .replace(/[æÆ]/g, (c) => (c === 'æ' ? 'ae' : 'AE'))
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .replace(/([A-Z]{2,})([A-Z][a-z])/g, '$1 $2')
      .toLowerCase()
      .normalize('NFD')
      .replace(/[\u0300-\u036f]/g, '')
      // Kana come apart from their marks too, which tell them from each other.
      .normalize('NFC')
      .replace(/[^a-zλ0-9\u3041-\u30ff\u4e00-\u9fff]+/g, ' ')
      .replace(/([a-z])(\d)/g, '$1 $2')
      .replace(/(\d)([a-z])/g, '$1 $2')
      .trim()
  );
}
